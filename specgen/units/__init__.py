"""Quantities: the closed set of units, the strict grammar, and how values are printed."""
