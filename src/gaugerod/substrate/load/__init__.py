"""Load: what the covering, its battens and its underlay weigh on one slope, and what was there before."""
