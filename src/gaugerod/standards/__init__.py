"""The published tables, one csv and one toml each, read only through loaders that refuse damage."""
