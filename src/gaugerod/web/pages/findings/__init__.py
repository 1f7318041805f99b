"""What every rule says."""
