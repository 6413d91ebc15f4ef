"""The change notice as finished text."""
