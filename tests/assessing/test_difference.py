"""A coat by difference, spot by spot: figures answer what a criterion asks for in words, and a word that says the opposite is told."""

from __future__ import annotations

import pytest

from specgen.assessing.results import Assessment, At, Verdict
from specgen.facts.job.by_difference import by_difference
from specgen.report.assessment_report import as_json, as_text
from tests.assessing.job import assessed, spots
from tests.good_spec import good_with, spec_of

P, F, OPEN = Verdict.CONFORMING, Verdict.NOT_CONFORMING, Verdict.NOT_DECIDED
TEXT = "After deducting the primer DFT at the same spot, no basecoat below 15 µm."
SAID = "point,item,value,by\nbase-film,DOOR,{},K. A.\n"


def _point(text: str, **more: str) -> dict[str, str]:
    stated = "".join(f"{key}: {value}, " for key, value in more.items())
    return {
        "jobs.refit.inspection.base-film": "{id: base-film, check: Film of both coats, after: base, "
        f'{stated}criterion: {{rule: own, min: 50 um, max: 140 um, each: spot, text: "{text}"}}}}'
    }


def _read(*texts: str, text: str = TEXT, before: str = "", more: dict[str, str] | None = None) -> Assessment:
    return assessed(before or spots(50, 60), *texts, changes={**_point(text), **(more or {})})


def _total(*means: float) -> str:
    return spots(*means).replace("primer-film", "base-film")


def _at(found: Assessment) -> At:
    return next(at for at in found.results if (at.point.id, at.item.id) == ("base-film", "DOOR"))


def _reasons(found: Assessment) -> str:
    return "; ".join(_at(found).reasons).replace("\N{NO-BREAK SPACE}", " ")


def test_every_spot_is_held_against_the_film_of_the_coat() -> None:
    assert _at(_read(_total(65, 75))).verdict is P
    found = _read(_total(65, 74.9))
    assert _at(found).verdict is F
    assert _reasons(found) == (
        "after deducting Film of the primer at the same spot: a spot measurement of 14.9 µm is below 15 µm (DOOR 2)"
    )
    # the total is within its limits at both spots, and so is the primer
    assert all(lot.judged is not None and lot.judged.verdict is P for lot in found.lots if lot.area.count)
    less = _at(found).less
    assert less is not None
    assert [(spot.name, float(spot.total), float(spot.before), float(spot.left)) for spot in less.spots] == [
        ("DOOR 1", 65, 50, 15),
        ("DOOR 2", 74.9, 60, 14.9),
    ]
    assert "less Film of the primer at the same spot: 2 spots, 14.9 µm to 15 µm" in as_text(found).replace("\xa0", " ")
    assert '"left": 14.9' in as_json(found)


@pytest.mark.parametrize(
    ("word", "totals", "verdict", "told"),
    [
        ("conforming", (65, 74), F, "K. A. recorded conforming, the figures say not conforming: the figures decide"),
        ("not conforming", (65, 75), F, "K. A. recorded not conforming, the figures say conforming"),
        ("conforming", (65, 75), P, ""),
    ],
)
def test_a_word_never_goes_before_the_figures(
    word: str, totals: tuple[float, ...], verdict: Verdict, told: str
) -> None:
    found = _read(_total(*totals), SAID.format(word))
    assert _at(found).verdict is verdict
    assert told in _reasons(found)
    placed = [(one.place.file, one.place.line, one.place.column) for one in found.findings if one.id == "RDG017"]
    assert placed == ([("3.csv", 2, 3)] if told else [])


def test_a_spot_that_was_not_read_before_is_not_decided_whatever_a_person_says() -> None:
    for said in ((), (SAID.format("conforming"),)):
        found = _read(_total(65, 75, 80), *said)
        assert _at(found).verdict is OPEN
        assert "Film of the primer was not read at the same spot: DOOR 3" in _reasons(found)
        assert "call a spot by the same name each time it is read" in _at(found).next
    assert _at(_read(_total(65, 70, 80))).verdict is F
    unread = assessed(_total(65), changes=_point(TEXT))
    assert _at(unread).verdict is OPEN


def test_units_of_the_two_points_may_differ_and_a_guard_band_counts_twice() -> None:
    mils = spots(2, 2).replace(",um\n", ",mil\n")
    assert _at(_read(_total(65.8, 65.8), before=mils)).verdict is P
    assert _at(_read(_total(65.7, 65.8), before=mils)).verdict is F
    guard = {"project.policies": "{guard_band: 1 um}"}
    assert _at(_read(_total(67, 77), more=guard)).verdict is P
    near = _read(_total(66.9, 77), more=guard)
    assert _at(near).verdict is OPEN
    assert "16.9 µm is within the guard band of the limit 15 µm (DOOR 1)" in _reasons(near)
    assert _at(_read(_total(62.9, 77), more=guard)).verdict is F


def test_a_coat_that_was_sanded_after_it_was_read_deducts_nothing() -> None:
    sanded = {"systems.cab.layers.primer.sanding_removes": "10 um"}
    found = _read(_total(65, 75), more=sanded)
    assert _at(found).verdict is OPEN
    assert "the coat was sanded after Film of the primer" in _reasons(found)
    after = {**sanded, "jobs.refit.inspection.primer-film.after_sanding": "yes"}
    assert _at(_read(_total(65, 75), more=after)).verdict is P


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        (TEXT, "min 15 um"),
        ("No spot outside the limits; after deducting the primer DFT at the same spot, no basecoat below 15 µm.", "min 15 um"),
        ("After deducting the DFT measured before, every spot 15 to 26 µm.", "15..26 um"),
        ("After deducting the DFT measured before, no spot outside 15 to 26 µm", "15..26 um"),
        ("After subtracting the primer, every point at least 15 µm.", "min 15 um"),
        ("After subtracting the primer, no reading above 1.2 mil.", "max 1.2 mil"),
        # words that mean something else, or another coat, or no film at all, stay a person's to judge
        ("After deducting the existing finish at the same point, no point outside the limits.", None),
        ("After deducting the zinc, no point below 15 µm.", None),
        ("After deducting the primer DFT, no primer below 15 µm.", None),
        ("After deducting the primer DFT, no basecoat below 15 µm; no runs.", None),
        ("After deducting the primer DFT, every spot 15 µm.", None),
        ("No basecoat below 15 µm.", None),
        # a limit turned round, or none, is not guessed
        ("After deducting the primer DFT, no spot 15 to 26 µm.", None),
        ("After deducting the primer DFT, no spot at least 15 µm.", None),
        ("After deducting the primer DFT, no spot between 15 and 26 µm.", None),
        ("After deducting the primer DFT, every spot outside 15 to 26 µm.", None),
        ("After deducting the primer DFT, each spot at most 26 µm.", "max 26 um"),
        # the other ways to say one end
        ("After deducting the primer DFT, every spot 15 µm or more.", "min 15 um"),
        ("After deducting the primer DFT, each reading 26 µm or less.", "max 26 um"),
        ("After deducting the primer DFT, every spot 15 µm minimum.", "min 15 um"),
        ("After deducting the primer DFT, every spot not less than 0.6 mil.", "min 0.6 mil"),
        ("After deducting the primer DFT, every spot not below 15 µm.", "min 15 um"),
        ("After deducting the primer DFT, no spot less than 15 µm.", "min 15 um"),
        ("After deducting the primer DFT, no spot more than 26 µm.", "max 26 um"),
        ("After deducting the primer DFT, every basecoat up to 26 µm.", "max 26 um"),
        ("After deducting the primer DFT, no spot 15 µm or more.", None),
        ("After deducting the primer DFT, no spot not below 15 µm.", None),
        ("After deducting the primer DFT, every spot less than 15 µm.", None),
        ("After deducting the primer DFT, every spot outside 15 µm or more.", None),
        ("After deducting the primer DFT, every spot 15 µm or more on edges.", None),
        ("After deducting the primer DFT, every spot from 15 µm or more.", None),
        ("After deducting the primer DFT, every spot 15 µm or more, no runs.", None),
    ],
)  # fmt: skip
def test_only_words_that_mean_one_thing_are_read(text: str, asked: str | None) -> None:
    spec = spec_of(good_with(_point(text), ()))
    job = spec.jobs["refit"]
    point = next(point for point in job.inspection if point.id == "base-film")
    (door, *_) = job.items
    system = spec.system_of(job, door)
    assert system is not None
    found = by_difference(point, door, system, job, spec, {"primer-film", "base-film"})
    assert (str(found.asked) if found is not None else None) == asked
    # nothing is deducted from the first coat, nor where nothing was read before
    assert by_difference(point, door, system, job, spec, {"base-film"}) is None
