"""The result as one JSON document with stable names."""
