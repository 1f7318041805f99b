"""Every save of a job."""
