"""The records of the sources: their fields, field types, senses and audience."""
