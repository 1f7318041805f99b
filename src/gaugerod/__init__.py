"""Sets out a pitched roof for tiling or slating. One call does the work: ``set_out(job) -> Result``."""

__version__ = "0.1.0"

__all__ = ["__version__"]
