"""Overcoat windows: when the next coat may go on, and what is done when it is late."""
