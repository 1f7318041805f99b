"""Setting out: the drawing that answers."""
