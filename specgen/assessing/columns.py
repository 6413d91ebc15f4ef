"""The columns of a file of readings, which are the fields of a record sheet too: the one list of their names.

A row is a gauge reading, the air at one moment, the result of a test, a batch of paint that was used, or work that was done; it fills
the columns that concern it. Called by the readers, the command, and whoever lays out a sheet or a template.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Column:
    """`unit` is what figures count in where neither cell nor heading says another; empty where one has to be stated."""

    name: str
    about: str
    unit: str = ""


_COLUMNS = (
    Column("point", "inspection point (by its id)"),
    Column("item", "item (by its id); empty for what holds for all items"),
    Column("part", "number of the part, where there are several of an item"),
    Column("coat", "coat (by its id), for air and batches"),
    Column("area", "measurement area, where there are several"),
    Column("spot", "spot; readings of one spot have the same name"),
    Column("reading", "number of the reading at its spot"),
    Column("test", "quantity measured where a point looks at several: salt, dust-quantity, dust-size or profile"),
    Column("value", "what was read: a number, a class, or conforming or not conforming"),
    Column("unit", "unit of the value, as in um or mil"),
    Column("water", "water on the patch of a salt test, where its value is the rise of conductivity in uS/cm", "mL"),
    Column("walk", "direction, for spots measured outwards from an area that does not conform"),
    Column("dropped_by", "who dropped this reading, which was repeated at its spot"),
    Column("dropped_why", "why it was dropped"),
    Column("product", "product applied (by its id)"),
    Column("batch", "batch number of the product"),
    Column("expires", "last day of the shelf life of that batch, as in 2027-03-31"),
    Column("cans", "cans used of that batch"),
    Column("air", "air temperature at the part", "degC"),
    Column("humidity", "relative humidity there", "%"),
    Column("surface", "surface temperature", "degC"),
    Column("dew_point", "dew point, as read or from tables", "degC"),
    Column("work", "work that was done: preparation, application, sanding, repair, acceptance or release"),
    Column("remark", "what there is to say of it, as how a repair was made"),
    Column("gauge", "instrument"),
    Column("serial", "serial number of the instrument"),
    Column("checked_on", "day the instrument was last checked, as in 2026-11-20"),
    Column("calibrated_until", "last day for which the instrument is calibrated, as in 2027-05-31"),
    Column("zero_before", "what the gauge read on its zero plate before these readings", "um"),
    Column("zero_after", "what it read there after them", "um"),
    Column("on", "day, or day and time, as in 2026-11-20 or 2026-11-20 14:05"),
    Column("by", "who measured or did it"),
)

COLUMNS: Mapping[str, Column] = {column.name: column for column in _COLUMNS}
PLACES: Mapping[str, int] = {name: at for at, name in enumerate(COLUMNS)}
"""Where the cell of a column stands in a record."""
INSTRUMENT = ("gauge", "serial", "checked_on", "calibrated_until", "zero_before", "zero_after")
"""What is recorded of an instrument and its checks."""
