"""The order list as finished text."""
