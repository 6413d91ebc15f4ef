"""What follows from a product by itself."""
