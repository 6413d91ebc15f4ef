"""Words, plurals and decimal signs of documents: `specgen.units.locale`."""

from __future__ import annotations

from fractions import Fraction

import pytest

from specgen.standards.citations import ARITHMETIC
from specgen.trade.working import Input, work
from specgen.units.locale import ENGLISH, Locale, counted, listed, phrase

COMMA = Locale(decimal_sign=",")


@pytest.mark.parametrize(
    ("number", "form"),
    [(0, "cans"), (1, "can"), (2, "cans"), (Fraction(1, 2), "cans"), (Fraction(3, 2), "cans"), (Fraction(1), "can")],
)
def test_only_one_is_one(number: int | Fraction, form: str) -> None:
    assert ENGLISH.plural("can", "cans", number) == form


def test_english_findings_count_by_two_full_forms() -> None:
    assert [counted("person has", "persons have", number) for number in (0, 1, 2)] == [
        "persons have",
        "person has",
        "persons have",
    ]


def test_a_plural_is_chosen_by_the_catalogue() -> None:
    three = Locale(ngettext=lambda one, many, number: f"{one}/{number % 3}")
    assert [three.plural("coat", "coats", number) for number in (1, 2, 3)] == ["coat/1", "coat/2", "coat/0"]


def test_the_decimal_sign_stands_between_digits_only() -> None:
    assert COMMA.figures("2.36 × 12.5 ÷ A.1") == "2,36 × 12,5 ÷ A.1"
    assert ENGLISH.figures("2.36") == "2.36"


def test_a_working_is_written_in_the_language_and_computed_in_none() -> None:
    inputs = (Input("t", "length", Fraction(5, 2), "", ""), Input("n", "number", Fraction(1), "", ""))
    found = work("w", "some", "ceil(t / n)", inputs, unit="coat", places=0, source=ARITHMETIC)
    language = Locale(lambda text: f"<{text}>", lambda one, many, number: f"<{one}:{number}>", ",")
    assert found.printed(language) == "3\N{NO-BREAK SPACE}<coat:3>"
    assert found.substituted(language) == "<rounded up> (2,5 ÷ 1)"
    assert (found.printed(), found.substituted()) == ("3\N{NO-BREAK SPACE}coats", "rounded up (2.5 ÷ 1)")


def test_a_phrase_is_said_by_its_template_and_its_own_phrases() -> None:
    german = {
        "{name}, share by mass": "{name}, Massenanteil",
        "dry": "trocken",
        "{first} or {more}": "{first} oder {more}",
    }
    locale = Locale(lambda text: german.get(text, text))
    assert phrase("{name}, share by mass", name="dry") == "dry, share by mass"
    assert locale(phrase("{name}, share by mass", name="dry")) == "dry, Massenanteil"  # a name is left as it stands
    assert locale(listed("{first} or {more}", ["dry", "wet", "dry"])) == "trocken oder wet oder trocken"
    assert (listed("{first} or {more}", []), locale(phrase("")), locale(phrase("a {brace}"))) == ("", "", "a {brace}")
