"""The job itself: areas, surfaces, inspection."""
