"""Source files as text with places: read them, and find where a value stands."""

from specgen.source.faults import FAULTS, Fault, fault
from specgen.source.places import Places
from specgen.source.project import SourceError, Sources, find_project, read_project
from specgen.source.reader import read_file, read_text
from specgen.source.tree import Mapping, Mark, Node, Scalar, Sequence, SourceFile

__all__ = [
    "FAULTS",
    "Fault",
    "Mapping",
    "Mark",
    "Node",
    "Places",
    "Scalar",
    "Sequence",
    "SourceError",
    "SourceFile",
    "Sources",
    "fault",
    "find_project",
    "read_file",
    "read_project",
    "read_text",
]
