"""Parts of pages that several kinds share."""
