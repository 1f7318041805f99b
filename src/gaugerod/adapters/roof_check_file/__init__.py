"""The door for a roof to check: a small TOML or JSON document of measurements, read and refused in plain words."""
