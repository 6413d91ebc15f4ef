"""Preparation before the first coat: steps, grades, media, profile, papers, times."""
