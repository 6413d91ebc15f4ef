"""Coat over coat inside a system: what the published tables say of each pair of layers."""
