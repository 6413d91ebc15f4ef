"""The data sheet as finished text."""
