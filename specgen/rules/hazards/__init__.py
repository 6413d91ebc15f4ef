"""Hazards: nothing is printed about a product whose hazards are not declared."""
