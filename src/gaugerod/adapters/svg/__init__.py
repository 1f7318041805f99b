"""Drawings written as SVG."""
