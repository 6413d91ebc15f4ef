"""The job card as finished text."""
