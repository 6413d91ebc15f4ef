"""The range overview as finished text."""
