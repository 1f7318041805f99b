"""What holds each unit down: the least pattern by rule, to which wind may add but never take away."""
