"""Film thickness: limits, sums and what a product allows."""
