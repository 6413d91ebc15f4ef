"""The document itself: what it can print, and the files it becomes."""
