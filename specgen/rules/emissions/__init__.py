"""Emissions: volatile organic compounds and their limits."""
