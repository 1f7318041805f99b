"""What lies beneath the covering and holds it."""
