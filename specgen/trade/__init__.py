"""The arithmetic of the trade: quantities in, workings out that a reader can compute again by hand."""
