"""Who may ask, from where, how often and how much."""
