"""The label sheet as finished text."""
