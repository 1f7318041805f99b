"""The only place that joins the engine to real adapters."""
