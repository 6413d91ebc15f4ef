"""What of a shared range is another than the one taken in: notes RNG004 to RNG006. Called by `specgen.checking`.

The range may change at any time, and for good reasons; whoever answers for the jobs that stand on it has to learn of it.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Finding
from specgen.model.parse import Loaded
from specgen.model.range_lock import DamagedLock, differing, taken_in
from specgen.source.range_faults import range_fault
from specgen.source.shared_range import KEY, LOCK


def range_notes(loaded: Loaded) -> Iterator[Finding]:
    """Each record that is different, at its place; nothing where no range is named or nobody asks."""
    if loaded.range is None or not loaded.range.watched or loaded.judged is None:
        return
    here = loaded.place(KEY)
    try:
        held = taken_in(loaded)
    except DamagedLock as fault:
        yield range_fault("RNG006", f"{LOCK} {fault}", here)
        return
    if held is None:
        yield range_fault("RNG005", f"no {LOCK} says what of {loaded.range.named} the jobs were written for", here)
        return
    found = differing(loaded, held)
    for addresses, what in (
        (found.moved, "differs from what was taken in of the range"),
        (found.new, "of the range is used and was not taken in yet"),
    ):
        for address in addresses:
            kind, key = address.split(".", 1)
            place = loaded.place((kind, key))
            yield range_fault("RNG004", f"{key} {what}", place, address, cause=what)
    for addresses, what in (
        (found.gone, "was taken in, and is no longer in the range"),
        (found.unused, "of the range was taken in, and nothing here uses it any more"),
    ):
        for address in addresses:
            yield range_fault("RNG004", f"{address} {what}", here, cause=what)
