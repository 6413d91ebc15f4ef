"""The findings of a run as text, JSON and annotations for a build server, and the pages behind their ids."""
