"""A building by its outline."""
