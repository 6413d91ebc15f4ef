"""Issued revisions: how they are frozen, chained, kept on disk and checked."""
