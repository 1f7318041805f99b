"""The app: the job on a laptop or phone. Pages show what the engine answers; none of them calculates."""
