"""What the hand-over record says, and what was accepted."""
