"""The documents as finished text: one folder a kind, shared parts beside them."""
