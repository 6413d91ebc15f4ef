"""File names: what of a document number goes into one, and which names no common file system can hold.

Called by `printing` and `rendering.writing`, and by the rule DOC003, which tells the author where the number stands.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    # the register reads names alone, and the records of the model are slow to import
    from specgen.model.job import Job
    from specgen.model.product import Product

LONGEST_NAME = 150
"""Bytes of UTF-8; leaves room for the marks of the temporary name under the 255 that file systems allow."""

# Names a Windows machine cannot hold, with or without an ending: a folder of documents is carried between machines.
_DEVICES = frozenset(
    ("con", "prn", "aux", "nul", *(f"{port}{number}" for port in ("com", "lpt") for number in range(1, 10)))
)
_REFUSED_SIGNS = frozenset('<>:"/\\|?*')


def file_stem(number: str) -> str:
    """The document number as part of a file name: letters, digits, point and hyphen only."""
    return re.sub(r"[^A-Za-z0-9.\-]+", "-", number).strip("-.")


def sheet_number(product: Product) -> str:
    """The document number of a product's data sheet, `DS-` and its id where none is stated."""
    return product.document.number if product.document is not None else f"DS-{product.id}"


AS_BUILT = "AB-"


def record_number(job: Job) -> str:
    """The document number of a job's as-built record: `AB-` and the number of the job."""
    return f"{AS_BUILT}{job.document.number}"


def name_fault(name: str) -> str:
    """Why `name` cannot be a file name everywhere, to stand after "it cannot be used:"; empty if it can."""
    stem = name.split(".")[0].strip().casefold()
    if not name or not name.strip():
        return "it is empty"
    if any(sign in _REFUSED_SIGNS or not sign.isprintable() for sign in name):
        return 'it contains a path separator, a control character or one of < > : " | ? *'
    if name.startswith((".", " ")) or name.endswith((".", " ")):
        return "it begins or ends with a full stop or a space"
    if stem in _DEVICES:
        return "it is reserved for a device"
    if len(name.encode("utf-8", "surrogatepass")) > LONGEST_NAME:
        return f"it is longer than {LONGEST_NAME} bytes"
    return ""
