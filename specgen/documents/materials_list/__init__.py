"""The materials list as finished text."""
