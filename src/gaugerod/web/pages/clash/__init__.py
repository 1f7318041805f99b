"""Two people changed the same thing: choose what stands."""
