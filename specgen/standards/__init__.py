"""Published tables and the documents they stand on."""
