"""Consumption: what a pack is said to cover, what is lost, and how many packs are ordered."""
