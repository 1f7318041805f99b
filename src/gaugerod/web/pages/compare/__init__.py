"""Two revisions compared by the marks that moved."""
