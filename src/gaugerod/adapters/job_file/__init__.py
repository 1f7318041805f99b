"""The door: the job file read, checked and described."""
