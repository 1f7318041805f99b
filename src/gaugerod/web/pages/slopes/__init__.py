"""The slopes and buildings of a job."""
