"""The rules of the trade, one module each, in a folder a family."""
