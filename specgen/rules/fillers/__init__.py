"""Wash and etch primers, and body filler."""
