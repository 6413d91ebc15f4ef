"""What follows from a job: its quantities, worked out."""
