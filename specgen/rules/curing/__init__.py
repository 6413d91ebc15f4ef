"""Curing kind: what a product that cures this way has and cannot have."""
