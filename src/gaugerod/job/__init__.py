"""The job and its result: one call, set_out(job), does the work."""
