"""Readings in, a verdict out: what was measured on a job, read from files, held against what the job asks, item by item.

`readings` reads files to records, `assessment` judges them. Called by the command `assess` and by the documents on inspection.
"""
