"""The hazard card as finished text."""
