"""Random slates in diminishing courses: longest at the eaves, shortest at the ridge, the lap kept at every course."""
