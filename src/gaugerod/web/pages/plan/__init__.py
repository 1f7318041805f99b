"""A building by its outline on plan."""
