"""What can be wrong with the shape of a source, apart from YAML itself: unknown keys, missing values, unreadable values, lost references.

The table is data; `specgen explain MOD003` prints a row of it. Called by `parse`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from specgen.findings import Severity


@dataclass(frozen=True, slots=True)
class ShapeFault:
    """One kind of fault. `severity` is an error unless the value can simply be left out."""

    id: str
    title: str
    why: str
    remedy: str
    severity: Severity = Severity.ERROR


_ROWS = (
    ShapeFault(
        "MOD001",
        "A key is not known here",
        "A key that is not read is a requirement that never reaches the document.",
        "Correct the spelling or delete the line; `specgen schema KIND` lists every key.",
    ),
    ShapeFault(
        "MOD002",
        "A required value is missing",
        "Without it the document would be incomplete.",
        "Write the key with its value.",
    ),
    ShapeFault(
        "MOD003",
        "A value cannot be read",
        "What cannot be read exactly is not guessed.",
        "Write the value in the form the finding names.",
    ),
    ShapeFault(
        "MOD004",
        "One value, a group of keys and a list are mixed up",
        "Each key takes exactly one of the three, and the document relies on it.",
        "Indent the keys below it for a group, or begin each entry with a hyphen for a list.",
    ),
    ShapeFault(
        "MOD005",
        "A reference has no target",
        "The product, system or preparation it names is in no file of the folder.",
        "Correct the id, or add the source it names.",
    ),
    ShapeFault(
        "MOD006",
        "An id is used twice",
        "Findings, waivers and changes address entries by id, so each id is used once in its list, whatever its capitals.",
        "Give one of the two entries another id.",
    ),
    ShapeFault(
        "MOD007",
        "A key has no value",
        "An empty value counts as missing and is never taken for text.",
        "Write a value or delete the line.",
        Severity.NOTE,
    ),
    ShapeFault(
        "MOD008",
        "The folder has no project source, or more than one",
        "Manufacturer, customer, units and page size come from one project source.",
        "Keep exactly one `project:` block in the folder; `specgen new project` prints one.",
    ),
    ShapeFault(
        "MOD009",
        "A list has too many entries",
        "Limits prevent one typing error from stopping the program.",
        "Split the list over several jobs.",
    ),
    ShapeFault(
        "MOD010",
        "The folder is written in another version of the source format",
        "Each version has its own keys and values; those of another version may mean something else.",
        "`specgen upgrade FOLDER` rewrites a folder of an older version and keeps comments and layout.",
    ),
    ShapeFault(
        "MOD011",
        "A picture cannot be used",
        "A picture that cannot be printed whole is not printed at all, and a page without it may say less than was meant.",
        "Save the picture as PNG, JPEG or plain SVG in the folder of the project.",
    ),
    ShapeFault(
        "MOD012",
        "The logo is all white",
        "It is printed on white paper, where nothing of it shows.",
        "Take the version of the logo that is made for white paper.",
        Severity.WARNING,
    ),
    ShapeFault(
        "MOD013",
        "A file that a record rests on cannot be read",
        "Nobody can hold the record against what it came from.",
        "Put the file into the folder of the project, as it was received.",
    ),
    ShapeFault(
        "BAS001",
        "The record that another is based on is not there",
        "What is carried over from it would be missing, and nobody could tell what.",
        "Name a record of the same kind by its id, or state everything here.",
    ),
    ShapeFault(
        "BAS002",
        "Records are based on each other in a circle, or too many on one another",
        "Values come from one record that states them; where none does, or the way there is long, nobody finds them.",
        "Let one record state the values, and base the others on that one.",
    ),
    ShapeFault(
        "BAS003",
        "What is to be carried over or left out is not there",
        "A name that meets nothing leaves out, or carries over, something else than its author meant.",
        "Write it as findings print addresses, without the record: layers.surfacer, hazards.first_aid.",
    ),
    ShapeFault(
        "BAS004",
        "The place of a new entry is not clear",
        "The order of coats, steps and inspection points is the order of the work.",
        "Name with `before` an entry that is carried over; without it a new entry stands at the end.",
    ),
    ShapeFault(
        "BAS005",
        "Two safety sets of a product state one entry",
        "Which of the two the product means is not stated, and each says something else on how to protect people.",
        "Name one of the sets, or give the entry another id in one of them.",
    ),
    ShapeFault(
        "BAS006",
        "A coat that differs on an item is none of its system",
        "A coat named here and not in the system would be applied nowhere, or in another place than was meant.",
        "Name a coat of the system by its id, with its variant or film on this item; for another coat write a system of its own.",
    ),
)

SHAPE_FAULTS: Mapping[str, ShapeFault] = {row.id: row for row in _ROWS}
