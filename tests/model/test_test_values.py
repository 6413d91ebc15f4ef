"""What an author may write for the result of a test and for its limit, and what is refused and how."""

from __future__ import annotations

import pytest
from pydantic_core import PydanticCustomError

from specgen.model.test_value import Measured, Rated, read_limit, read_result

READ = [
    ("5.2 MPa", Measured, "5.2 MPa"),
    ("725 psi", Measured, "725 psi"),
    ("51 kg/cm2", Measured, "51 kgf/cm2"),
    ("480 h", Measured, "480 h"),
    ("1.8 mm", Measured, "1.8 mm"),
    ("121 swings", Measured, "121 oscillations"),
    ("1 swing", Measured, "1 oscillation"),
    ("100 double rubs", Measured, "100 double rubs"),
    ("160 in-lb", Measured, "160 in.lb"),
    ("0.4 dE", Measured, "0.4 dE"),
    ("8", Measured, "8"),
    ("class 1", Rated, "class 1"),
    ("4B", Rated, "4B"),
    ("Ri 0", Rated, "Ri 0"),
    ("0(S0)", Rated, "0(S0)"),
    ("2 (S3)b", Rated, "2(S3)b"),
    ("6M", Rated, "6M"),
    ("6MD", Rated, "6MD"),
    ("9-S", Rated, "9-S"),
    ("HB", Rated, "HB"),
]


@pytest.mark.parametrize(("text", "type_", "said"), READ)
def test_a_result_is_read(text: str, type_: type[Measured] | type[Rated], said: str) -> None:
    value = read_result(text)
    assert isinstance(value, type_)
    assert str(value) == said


@pytest.mark.parametrize(
    ("text", "low", "high", "alone"),
    [
        ("min 5 MPa", "5 MPa", None, None),
        ("max 3 mm", None, "3 mm", None),
        ("80..90 GU", "80 GU", "90 GU", None),
        ("50 +- 5 GU", "45 GU", "55 GU", None),
        ("0.5 +- 0.05 mm", "0.45 mm", "0.55 mm", None),
        ("class 0..1", "class 0", "class 1", None),
        ("Ri 0..1", "Ri 0", "Ri 1", None),
        ("0..1", "0", "1", None),
        ("min 4B", "4B", None, None),
        ("0(S0)", None, None, "0(S0)"),
        ("class 1", None, None, "class 1"),
    ],
)
def test_a_limit_is_read(text: str, low: str | None, high: str | None, alone: str | None) -> None:
    limit = read_limit(text)
    ends = [str(value) if value is not None else None for value in (limit.low, limit.high, limit.alone)]
    assert ends == [low, high, alone]
    assert len(limit.stated) == sum(end is not None for end in ends)


@pytest.mark.parametrize(
    ("text", "what", "remedy"),
    [
        ("5.2 Mpa", "Mpa is not a unit known here, in '5.2 Mpa'", "write MPa"),
        ("5.2 N", "N is not a unit known here, in '5.2 N'", "write a number"),
        ("480h", "'480h' has no space between number and unit", "write a number"),
        ("> 5 MPa", "'> 5 MPa' uses a sign where a word is read", "write a number"),
        ("good", "'good' is not the result of a test", "write a number"),
        ("x" * 200, "'" + "x" * 60 + "…' is not the result of a test", "write a number"),
    ],
)
def test_what_is_no_result_is_refused(text: str, what: str, remedy: str) -> None:
    with pytest.raises(PydanticCustomError) as refused:
        read_result(text)
    assert (refused.value.context or {})["what"] == what
    assert (refused.value.context or {})["remedy"].startswith(remedy)


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("5 MPa", "5 MPa does not say whether it is a lower or an upper limit"),
        ("90..80 GU", "the range 90..80 GU runs backwards"),
        ("50 +- 0 GU", "50 +- 0 GU has a tolerance of nothing"),
        ("50 mm +- 5 GU", "'50 mm +- 5 GU' is not the limit of a test"),
        ("min 5 Mpa", "Mpa is not a unit known here, in '5 Mpa'"),
        ("no blisters", "'no blisters' is not the limit of a test"),
        ("min", "'min' is not the limit of a test"),
    ],
)
def test_what_is_no_limit_is_refused(text: str, what: str) -> None:
    with pytest.raises(PydanticCustomError) as refused:
        read_limit(text)
    assert (refused.value.context or {})["what"] == what
