"""The records of the sources: their fields, field types, polarities and audience."""
