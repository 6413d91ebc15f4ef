"""Views: frozen records of finished text, which templates print and never compute."""
