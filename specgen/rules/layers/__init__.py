"""Layer order: which coat may stand where."""
