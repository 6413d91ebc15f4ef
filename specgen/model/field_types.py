"""The types a field of the model may have, each with its own strict parser from text.

Every scalar arrives as text. pydantic would read `no`, `1_000` and `1700006400` as it likes, so none of its coercions is used: a
field type is a `Strict` with a parser that takes text and nothing else. A test lists the types in use.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date, datetime, time
from enum import StrEnum
from fractions import Fraction
from typing import Annotated, Any

from pydantic import GetJsonSchemaHandler
from pydantic_core import PydanticCustomError, core_schema

from specgen.model.file_names import name_fault
from specgen.model.prose import BLANKS
from specgen.pictures.prepared import ENDINGS
from specgen.source.shared_range import spelled
from specgen.standards.reads import remembered
from specgen.units.count import Count, parse_count
from specgen.units.kinds import KINDS
from specgen.units.quantity import (
    CalendarSpan,
    Quantity,
    QuantityError,
    Range,
    parse_one_or_range,
    parse_quantity,
    parse_range,
    parse_span,
)

LINE_LIMIT = 200
TEXT_LIMIT = 2000
COMPARED = 500
IDS_SHOWN = 12
_UNPRINTABLE = frozenset({"Cc", "Cf", "Cs", "Co", "Cn"})
_LATIN_SCALARS: list[str] = ["string", "number", "integer", "boolean"]


def refuse(what: str, remedy: str) -> PydanticCustomError:
    """The fault of one value: what is wrong with it, and what to write instead."""
    return PydanticCustomError("specgen", "{what}", {"what": what, "remedy": remedy})


@dataclass(frozen=True, slots=True)
class Strict:
    """A field type: its name, its parser, and the JSON Schema of what a YAML 1.2 editor sees in its place.

    `table` names the published table whose ids it takes, `quantity` the kind of quantity that it measures; both are empty for
    every other type. `samples` are values as an editor offers them; a type of free words, and a closed list, has none.
    """

    name: str
    parse: Callable[[str], Any]
    schema: Callable[[], Mapping[str, Any]]
    table: str = ""
    quantity: str = ""
    samples: tuple[Any, ...] = ()

    def __get_pydantic_core_schema__(self, source: Any, handler: Any) -> core_schema.CoreSchema:
        return core_schema.no_info_plain_validator_function(self._read)

    def __get_pydantic_json_schema__(self, schema: Any, handler: GetJsonSchemaHandler) -> dict[str, Any]:
        return dict(self.schema(), examples=list(self.samples)) if self.samples else dict(self.schema())

    def _read(self, value: Any) -> Any:
        if not isinstance(value, str):
            held = "a list" if isinstance(value, tuple) else "a group of keys"
            raise refuse(f"{held} is given where one value is required", f"write one {self.name} here")
        try:
            return self.parse(value)
        except QuantityError as fault:
            raise refuse(fault.what, fault.remedy) from None


def _pattern(pattern: str, kind: str = "string") -> Callable[[], Mapping[str, Any]]:
    return lambda: {"type": kind, "pattern": f"^{pattern}$"}


def _parse_yes_no(text: str) -> bool:
    if text not in {"yes", "no"}:
        raise refuse(f"{_short(text)} is neither yes nor no", "write yes or no")
    return text == "yes"


def _parse_whole(text: str) -> int:
    if not re.fullmatch(r"0|[1-9][0-9]{0,8}", text):
        raise refuse(f"{_short(text)} is not a whole number", "write digits only, as in 4")
    return int(text)


def _parse_decimal(text: str) -> Fraction:
    if not re.fullmatch(r"-?[0-9]{1,12}(\.[0-9]{1,9})?", text):
        raise refuse(f"{_short(text)} is not a decimal number", "write digits with a decimal point, as in 1.25")
    return Fraction(text)


def _parse_date(text: str) -> date:
    if not re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", text):
        raise refuse(f"{_short(text)} is not a date", "write year, month and day, as in 2026-03-31")
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise refuse(f"{text} is not a day of the calendar", "check month and day") from None


def _parse_moment(text: str) -> datetime:
    if not re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2} [0-9]{2}:[0-9]{2}", text):
        raise refuse(f"{_short(text)} is not a day and time", "write it as in 2026-11-27 14:00")
    try:
        return datetime.fromisoformat(text)
    except ValueError:
        raise refuse(f"{text} is not a day and time of the calendar", "check month, day, hours and minutes") from None


def _parse_time_of_day(text: str) -> time:
    if not re.fullmatch(r"[0-9]{2}:[0-9]{2}", text):
        raise refuse(f"{_short(text)} is not a time of day", 'write hours and minutes in quotes, as in "07:00"')
    try:
        return time.fromisoformat(text)
    except ValueError:
        raise refuse(f"{text} is not a time of day", "hours run to 23, minutes to 59") from None


ID_PATTERN = r"[A-Za-z][A-Za-z0-9_\-]{0,63}"


def _parse_id(text: str) -> str:
    if not re.fullmatch(ID_PATTERN, text):
        raise refuse(
            f"{_short(text)} cannot be an id",
            "begin with a letter, then use letters, digits, hyphen and underscore only, at most 64",
        )
    return text


def _parse_code(text: str) -> str:
    if not re.fullmatch(r"[A-Za-z0-9][A-Za-z0-9 ._/+:\-]{0,59}", text) or text.endswith(" "):
        raise refuse(
            f"{_short(text)} cannot be a code",
            "use letters, digits, space and . _ / + : - only, at most 60 characters",
        )
    return text


_PICTURE = re.compile(r"(?P<name>.+?)(?P<was> sha256:[0-9a-f]{64})?", re.DOTALL)


def _file_below(text: str, what: str, example: str) -> str:
    """The name of a file below the folder of the project, without the SHA-256 put behind it."""
    found = _PICTURE.fullmatch(text)
    name = found["name"] if found is not None else ""
    fault = next((fault for step in name.split("/") if (fault := name_fault(step))), "")
    if fault or len(text) > LINE_LIMIT:
        raise refuse(
            f"{_short(text)} cannot be the file of {what}",
            f"write its name from the folder of the project on, as in {example}; it lies inside that folder",
        )
    return name


def _parse_kept_file(text: str) -> str:
    _file_below(text, "a report", "reports/204.pdf")
    return text


def _parse_sha256(text: str) -> str:
    if not re.fullmatch(r"[0-9a-f]{64}", text):
        raise refuse(f"{_short(text)} is not a SHA-256", "write its 64 digits and letters a to f")
    return text


def _parse_picture(text: str) -> str:
    name = _file_below(text, "a picture", "pictures/door.png")
    if name.rpartition(".")[2].lower() not in ENDINGS:
        raise refuse(f"{_short(text)} ends neither in .png, .jpg, .jpeg nor .svg", "save the picture as one of these")
    return text


def _parse_range_folder(text: str) -> str:
    try:
        spelled(text)
    except ValueError as fault:
        raise refuse(f"{_short(text)} {fault}", "write ../range, or git:REVISION:../range") from None
    return text


def _parse_colour(text: str) -> str:
    if not re.fullmatch(r"#[0-9A-Fa-f]{6}", text):
        raise refuse(f"{_short(text)} is not a colour", 'write red, green and blue in quotes, as in "#0b5c6b"')
    return text.lower()


def _parse_letter(text: str) -> str:
    if not re.fullmatch(r"[A-Z]{1,2}|[0-9]{1,2}", text):
        raise refuse(f"{_short(text)} cannot be a mark", "write one or two capital letters or digits, as in A or 12")
    return text


def _parse_position(text: str) -> Fraction:
    if not re.fullmatch(r"[01](\.[0-9]{1,4})?", text) or Fraction(text) > 1:
        raise refuse(f"{_short(text)} is no place on a picture", "write a share of its width or height, as in 0.25")
    return Fraction(text)


def _parse_ratio(text: str) -> tuple[Fraction, ...]:
    if not re.fullmatch(r"[0-9]{1,4}(\.[0-9]{1,3})?(:[0-9]{1,4}(\.[0-9]{1,3})?){1,2}", text):
        raise refuse(f"{_short(text)} is not a mixing ratio", "write the parts with a colon, as in 4:1")
    parts = tuple(Fraction(piece) for piece in text.split(":"))
    if not all(parts):
        raise refuse(f"{text} has a part of zero", "every part of a mixing ratio is more than zero")
    return parts


def _printable(text: str, allowed: str) -> str:
    # which nearly every text is as a whole
    if not text.isprintable():
        bad = next((c for c in text if unicodedata.category(c) in _UNPRINTABLE and c not in allowed), None)
        if bad is not None:
            raise refuse(f"the text contains the unprintable character U+{ord(bad):04X}", "delete that character")
    if not text.strip():
        raise refuse("the text is empty", "write something, or leave the line out")
    return text.strip()


def _parse_line(text: str) -> str:
    if "\n" in text.strip():
        raise refuse("the text runs over more than one line", "write it on one line")
    if len(text) > LINE_LIMIT:
        raise refuse(f"the text is longer than {LINE_LIMIT} characters", "shorten it")
    return _words_fit(_printable(text, ""))


def _parse_text(text: str) -> str:
    if len(text) > TEXT_LIMIT:
        raise refuse(f"the text is longer than {TEXT_LIMIT} characters", "split it over several entries")
    return _words_fit(_printable(text, "\n"))


def _words_fit(text: str) -> str:
    longest = max(BLANKS.split(text), key=len)
    # A word that cannot be broken makes the layout slow and runs out of its column.
    if len(longest) > 80:
        raise refuse(f"the word {_short(longest)} is longer than 80 characters", "break it with a space")
    return text


def _short(text: str) -> str:
    shown = text if len(text) <= 40 else text[:40] + "…"
    return f"'{shown}'"


def _anything() -> Mapping[str, Any]:
    return {"type": _LATIN_SCALARS}


def _quantity(kind: str) -> Any:
    return Strict(
        f"{kind.replace('_', ' ')} such as {_one_example(kind)}",
        lambda text: parse_quantity(kind, text),
        lambda: {"type": "string", "pattern": rf"^-?[0-9.]+ ({_alternatives(kind)})$"},
        quantity=kind,
        samples=(_one_example(kind),),
    )


def _range(kind: str) -> Any:
    return Strict(
        f"{kind.replace('_', ' ')} range such as {_range_examples(kind)[0]}",
        lambda text: parse_range(kind, text),
        lambda: {"type": "string", "pattern": _range_pattern(kind)},
        quantity=kind,
        samples=_range_examples(kind),
    )


def _one_or_range(kind: str) -> Any:
    """One value, or a range of them."""
    return Strict(
        f"{kind.replace('_', ' ')} or range such as {_range_examples(kind)[0]}",
        lambda text: parse_one_or_range(kind, text),
        lambda: {"type": "string", "pattern": rf"^-?[0-9.]+ ({_alternatives(kind)})$|{_range_pattern(kind)}"},
        quantity=kind,
        samples=(_one_example(kind), *_range_examples(kind)),
    )


def _one_example(kind: str) -> str:
    return f"{KINDS[kind].example[0]} {KINDS[kind].base}"


def _range_examples(kind: str) -> tuple[str, ...]:
    (low, high), base = KINDS[kind].example, KINDS[kind].base
    return f"{low}..{high} {base}", f"min {low} {base}", f"max {high} {base}"


def _range_pattern(kind: str) -> str:
    units = _alternatives(kind)
    return rf"^(min|max) -?[0-9.]+ ({units})$|^-?[0-9.]+.*(\.\.| (\+-|±)) ?-?[0-9.]+ ({units})$"


def _alternatives(kind: str) -> str:
    return "|".join(re.escape(unit) for unit in KINDS[kind].units)


def choice(words: type[StrEnum]) -> Strict:
    """One word of a closed list; the enumeration's values are what an author writes."""
    known = {word.value: word for word in words}

    def parse(text: str) -> StrEnum:
        if text not in known:
            raise refuse(f"{_short(text)} is not one of the words known here", nearest_of(text, list(known)))
        return known[text]

    return Strict("word of the list", parse, lambda: {"enum": list(known)})


def nearest_of(text: str, known: list[str], most: int | None = None) -> str:
    """A remedy that names the nearest of `known`, or lists them: all of a closed list, `most` of what an author may add to."""
    from difflib import get_close_matches

    from specgen.standards.tables import table as look_up

    tried = re.sub(r"[ -]", "_", text.lower())
    for row in look_up("words_for_words").rows if most is None else ():
        if row["among"] in known and row["tried"] in {tried, tried.rstrip("0123456789_")}:
            return row["say"]
    # comparing takes time for every word known, and a folder may hold thousands of ids
    near = known if len(known) <= COMPARED else ()
    close = get_close_matches(text, near, n=1, cutoff=0.6) or get_close_matches(text.lower(), near, n=1, cutoff=0.6)
    if close:
        return f"did you mean {close[0]}?"
    shown = sorted(known)[:most]
    left = len(known) - len(shown)
    return f"use one of: {', '.join(shown)}" + (f" and {left} more" if left else "")


def listed(table: str) -> Strict:
    """An id of a published table of `standards/tables`."""

    @remembered
    def known() -> list[str]:
        from specgen.standards.tables import table as look_up

        return [row["id"] for row in look_up(table).rows]

    def parse(text: str) -> str:
        if text not in known():
            raise refuse(f"{_short(text)} is not in the table {table}", nearest_of(text, known()))
        return text

    return Strict(f"id of the table {table}", parse, lambda: {"enum": list(known())}, table)


YesNo = Annotated[bool, Strict("yes or no", _parse_yes_no, lambda: {"enum": ["yes", "no"]})]
WholeNumber = Annotated[int, Strict("whole number", _parse_whole, lambda: {"type": "integer", "minimum": 0})]
CountRange = Annotated[
    Count,
    Strict(
        "whole number or range of them",
        parse_count,
        lambda: {"type": ["integer", "string"], "minimum": 0, "pattern": r"^(min )?[0-9]+$|^[0-9]+\.\.[0-9]+$"},
        samples=(2, "2..3"),
    ),
]
DecimalNumber = Annotated[
    Fraction, Strict("decimal number", _parse_decimal, lambda: {"type": "number"}, samples=(1.25,))
]
IsoDate = Annotated[date, Strict("date", _parse_date, _pattern(r"[0-9]{4}-[0-9]{2}-[0-9]{2}"), samples=("2026-03-31",))]
Moment = Annotated[
    datetime,
    Strict(
        "day and time",
        _parse_moment,
        _pattern(r"[0-9]{4}-[0-9]{2}-[0-9]{2} [0-9]{2}:[0-9]{2}"),
        samples=("2026-11-27 14:00",),
    ),
]
TimeOfDay = Annotated[
    time, Strict("time of day", _parse_time_of_day, _pattern(r"[0-9]{2}:[0-9]{2}"), samples=("07:00",))
]
Id = Annotated[str, Strict("id", _parse_id, _pattern(ID_PATTERN))]
Code = Annotated[str, Strict("code", _parse_code, _anything)]
Ratio = Annotated[
    tuple[Fraction, ...], Strict("mixing ratio", _parse_ratio, _pattern(r"[0-9.]+(:[0-9.]+)+"), samples=("4:1",))
]
Line = Annotated[str, Strict("line of text", _parse_line, _anything)]
Text = Annotated[str, Strict("text", _parse_text, _anything)]
PICTURE_FILE = Strict("file of a picture", _parse_picture, lambda: {"type": "string"}, samples=("pictures/door.png",))
"""A file below the folder of the project. Where it was read, its SHA-256 follows: with it a changed picture is a change."""
PictureFile = Annotated[str, PICTURE_FILE]
KEPT_FILE = Strict(
    "file kept beside the sources", _parse_kept_file, lambda: {"type": "string"}, samples=("reports/204.pdf",)
)
"""A file below the folder of the project that is kept as it is; the SHA-256 of what was read follows its name."""
KeptFile = Annotated[str, KEPT_FILE]
Sha256 = Annotated[str, Strict("SHA-256", _parse_sha256, _pattern("[0-9a-f]{64}"))]
RangeFolder = Annotated[
    str,
    Strict(
        "folder of a range", _parse_range_folder, lambda: {"type": "string"}, samples=("../range", "git:v1:../range")
    ),
]
MarkLetter = Annotated[
    str, Strict("letter of a mark", _parse_letter, lambda: {"type": ["string", "integer"]}, samples=("A", 12))
]
Position = Annotated[
    Fraction,
    Strict(
        "place on a picture", _parse_position, lambda: {"type": "number", "minimum": 0, "maximum": 1}, samples=(0.25,)
    ),
]
Colour = Annotated[str, Strict("colour", _parse_colour, _pattern("#[0-9A-Fa-f]{6}"), samples=("#0b5c6b",))]
Span = Annotated[
    CalendarSpan,
    Strict("number of months or years", parse_span, _pattern(r"[0-9]+ (months?|years?)"), samples=("24 months",)),
]

Thickness = Annotated[Quantity, _quantity("thickness")]
Length = Annotated[Quantity, _quantity("length")]
Area = Annotated[Quantity, _quantity("area")]
Volume = Annotated[Quantity, _quantity("volume")]
Mass = Annotated[Quantity, _quantity("mass")]
MolarMass = Annotated[Quantity, _quantity("molar_mass")]
Density = Annotated[Quantity, _quantity("density")]
Share = Annotated[Quantity, _quantity("share")]
Percentage = Annotated[Quantity, _quantity("percentage")]
Humidity = Annotated[Quantity, _quantity("humidity")]
Temperature = Annotated[Quantity, _quantity("temperature")]
Duration = Annotated[Quantity, _quantity("duration")]
SpreadingRate = Annotated[Quantity, _quantity("spreading_rate")]
VocContent = Annotated[Quantity, _quantity("voc_content")]
Heat = Annotated[Quantity, _quantity("heat")]
AirFlow = Annotated[Quantity, _quantity("air_flow")]
RoomVolume = Annotated[Quantity, _quantity("room_volume")]
ReleaseRate = Annotated[Quantity, _quantity("release_rate")]
Pressure = Annotated[Quantity, _quantity("pressure")]
Voltage = Annotated[Quantity, _quantity("voltage")]
Gloss = Annotated[Quantity, _quantity("gloss")]
SurfaceDensity = Annotated[Quantity, _quantity("surface_density")]

ThicknessOrRange = Annotated[Quantity | Range, _one_or_range("thickness")]
ShareOrRange = Annotated[Quantity | Range, _one_or_range("share")]
DurationOrRange = Annotated[Quantity | Range, _one_or_range("duration")]
TemperatureOrRange = Annotated[Quantity | Range, _one_or_range("temperature")]

ThicknessRange = Annotated[Range, _range("thickness")]
LengthRange = Annotated[Range, _range("length")]
ShareRange = Annotated[Range, _range("share")]
DurationRange = Annotated[Range, _range("duration")]
TemperatureRange = Annotated[Range, _range("temperature")]
TemperatureDifferenceRange = Annotated[Range, _range("temperature_difference")]
HumidityRange = Annotated[Range, _range("humidity")]
AbsoluteHumidityRange = Annotated[Range, _range("absolute_humidity")]
GlossRange = Annotated[Range, _range("gloss")]
