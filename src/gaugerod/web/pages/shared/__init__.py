"""A job shown to whoever has its link."""
