"""Shapes: pitch, slopes, polygons and roof form. Axes and signs: docs/concepts/axes.md."""
