"""A checked folder in, the bytes of its documents out."""
