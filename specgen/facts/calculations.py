"""Where the calculations of a document stand: as it says itself, else as the project says. Called by the views."""

from __future__ import annotations

from specgen.model.control import Calculations, DocumentControl
from specgen.model.project import Project


def place_of_calculations(control: DocumentControl | None, project: Project) -> Calculations:
    """`control` is None for a document whose sources state none, as that of a whole folder."""
    return (control.calculations if control is not None else None) or project.calculations
