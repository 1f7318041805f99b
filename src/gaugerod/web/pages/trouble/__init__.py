"""What cannot be answered, said plainly."""
