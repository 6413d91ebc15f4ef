"""What follows from a job: its parts, areas, packs, air."""
