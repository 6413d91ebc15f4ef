"""Drawings: SVG text from finished values."""
