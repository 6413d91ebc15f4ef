"""Tests: what a method measures, what a limit accepts, and whether a test report is evidence for what is asked or claimed."""
