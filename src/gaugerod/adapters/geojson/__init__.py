"""Plan outlines from GeoJSON (RFC 7946)."""
