"""Inspection of film: counting rules, gauges, numbers and places of readings."""
