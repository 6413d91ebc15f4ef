"""Repair of spots: how the new coats run out into old paint."""
