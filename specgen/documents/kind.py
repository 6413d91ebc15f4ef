"""A kind of document as data. Each folder of documents declares its own as `KIND`; `specgen.printing` prints any of them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Generic, Literal, Protocol, TypeVar

from specgen.documents.context import Context
from specgen.documents.parts.apart import Apart
from specgen.documents.parts.tables import TableView
from specgen.model.spec import Spec

About = Literal["job", "product", "folder", "jobs", "offer", "report", "comparison", "assessment"]
"""What a document is about: its subject is a Job, a Product, the Spec (twice), an Offer, a LabReport, two sides compared, or readings
assessed."""
