"""The thinners and cleaners a job orders: chemicals beside the coatings. Called by the rule on them and by the documents."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from specgen.model.hazards import SignalWord
from specgen.model.job import Job, Supply, SupplyKind
from specgen.standards.tables import table

CHEMICALS = frozenset({SupplyKind.THINNER, SupplyKind.CLEANER})


def chemicals(job: Job) -> Iterator[Supply]:
    """The supplies that are thinners or cleaners."""
    for entry in job.consumption.supplies if job.consumption is not None else ():
        if entry.kind in CHEMICALS:
            yield entry


class Marks(NamedTuple):
    """What the label of a chemical shows by its hazard statements."""

    signal_word: SignalWord
    pictograms: tuple[str, ...]


def marks_of(entry: Supply) -> Marks:
    """Signal word and pictograms by the published table of label elements, for a supply states its H statements alone."""
    rows = [row for row in table("label_elements").rows if set(row["statements"].split()) & set(entry.statements)]
    said = {row["signal_word"] for row in rows}
    gravest = next((word for word in (SignalWord.DANGER, SignalWord.WARNING) if word.value in said), SignalWord.NONE)
    shown = dict.fromkeys(code for row in rows for code in row["pictograms"].split())
    return Marks(gravest, tuple(sorted(shown)))


def supply_codes(job: Job) -> tuple[str, ...]:
    """Every H statement of its thinners and cleaners, each once."""
    return tuple(dict.fromkeys(code for entry in chemicals(job) for code in entry.statements))
