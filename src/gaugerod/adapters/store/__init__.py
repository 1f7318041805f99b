"""The kept jobs: one SQLite file, every save a revision, nothing ever written over."""
