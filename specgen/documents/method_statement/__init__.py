"""The method statement as finished text."""
