"""What travels inside a PDF: files a reader can save from it, each with its media type and what it is to the document.

Called by `pdf` while a document is written; whoever prints or issues one hands the records in.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Relationship = Literal["Source", "Data"]


@dataclass(frozen=True, slots=True)
class Attachment:
    """One file inside a PDF: `name` as it is saved ("MS-001.json"), `media_type` such as "application/json".

    `relationship` is "Source" for what the document was made from, "Data" for figures behind what it shows.
    """

    name: str
    data: bytes
    media_type: str
    relationship: Relationship
    description: str
