"""The conformity report: its texts, that its first page says what to do, that plots say what their figures are, and that it is ours in every language."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from specgen.assessing.readings import Asked, File
from specgen.assessing.results import Assessment
from specgen.documents.conformity_report.film import MOST_SPOTS
from specgen.documents.conformity_report.view import ConformityReport, conformity_report
from specgen.documents.parts.as_read import with_unit
from specgen.documents.parts.wording import Words
from specgen.model.parse import load
from specgen.model.spec import Spec
from specgen.printing.conformity import print_conformity
from specgen.units.locale import ENGLISH, Locale
from tests.assessing.job import DAY, FILM, OWN, PA_2, assessed, assessed_job, spots
from tests.documents.conftest import context
from tests.documents.test_every_word_translated import Brackets
from tests.documents.test_golden import GOLDEN, _lines
from tests.good_spec import DEMO, good_with, spec_of

CHANGES = {
    "jobs.refit.inspection.climate": "{id: climate, check: Ambient conditions, at: during-application, criterion: {text: within the limits}}",
}
REST = """point,item,coat,product,batch,expires,cans,value,air,humidity,surface,on,by
prepared,DOOR,,,,,,conforming,,,,2026-11-20,K. A.
prepared,STEP,,,,,,not conforming,,,,2026-11-20,K. A.
climate,,primer,,,,,,20,80,20,2026-11-20,K. A.
climate,,base,,,,,,20,55,,2026-11-21,K. A.
,,primer,primer,B1,2027-01-31,2,,,,,2026-11-20,B. T.
"""


def _view(found: Assessment, spec: Spec, locale: Locale = ENGLISH) -> ConformityReport:
    return conformity_report(found, context(spec, day=DAY, words=Words.of(spec.project, locale)))


def _report(*texts: str, criterion: str = OWN, locale: Locale = ENGLISH) -> ConformityReport:
    spec = spec_of(good_with({f"{FILM}.criterion": criterion, **CHANGES}, ()))
    return _view(assessed(*texts, criterion=criterion, changes=CHANGES), spec, locale)


def test_the_texts_are_as_expected(golden: Callable[[Path, str], None]) -> None:
    view = _report(spots(50, 39, 70, 41), REST)
    golden(GOLDEN / "conformity_report.txt", "\n".join(_lines(view, "")) + "\n")


def test_what_to_do_names_the_inspection_it_belongs_to() -> None:
    view = _report(spots(50, 39, 70, 41), REST)
    assert view.items[0].do[0] == "Film of the primer: Sand back and recoat."
    assert all(line.partition(": ")[0] in {row[0] for row in view.points[0].rows} for line in view.items[0].do)


def test_zero_readings_stand_with_the_unit_and_the_signs_of_the_page() -> None:
    text = spots(50, 55, 70).replace("point,", "zero_before (mil),zero_after,gauge,serial,checked_on,point,", 1)
    head, _, rows = text.partition("\n")
    stated = "\n".join(f"-0.1,'0,5 um',probe,K 1,2026-11-20,{row}" for row in rows.splitlines())
    (row,) = _report(f"{head}\n{stated}\n".replace("'", '"'), REST).instruments.rows
    nb, minus = "\N{NO-BREAK SPACE}", "\N{MINUS SIGN}"
    assert row[-3:-1] == (f"{minus}0.1{nb}mil", f"0.5{nb}µm")


@pytest.mark.parametrize(("text", "unit", "told"), [
    ("19,5", "degC", "19.5 °C"),
    ("-0,3", "um", "−0.3 µm"),
    ("85 GU", "", "85 GU"),
    ("3.2", "MPa", "3.2 MPa"),
    ("4B", "", "4B"),
    ("0(S0)", "", "0(S0)"),
    ("class 1", "", "class 1"),
    ("2", "", "2"),
    ("", "um", ""),
])  # fmt: skip
def test_a_cell_is_printed_with_its_unit_and_other_text_as_it_was_entered(text: str, unit: str, told: str) -> None:
    assert with_unit(text, unit, Words(ENGLISH, {})).replace("\N{NO-BREAK SPACE}", " ") == told


def test_a_guard_band_is_named_with_the_limit_itself() -> None:
    more = {**CHANGES, "project.policies": "{guard_band: 1 um}"}
    spec = spec_of(good_with(more, ()))
    view = _view(assessed(spots(50, 39.5, 70), changes=more), spec)
    said = "a spot measurement of 39.5\u00a0µm is within the guard band of the limit 40\u00a0µm (DOOR 2)."
    assert f"Film of the primer: {said}" in view.items[0].why
    assert view.judged[-1] == "A film nearer to a limit than 1\u00a0µm is not decided, as the project asks."


def test_the_first_page_says_what_is_wrong_and_what_to_do() -> None:
    view = _report(spots(50, 39, 70), REST)
    door, step = view.items
    assert (door.item, door.verdict) == ("DOOR", "DOES NOT CONFORM")
    assert "Film of the primer: a spot measurement of 39\u00a0µm is below 40\u00a0µm (DOOR 2)." in door.why
    assert "Film of the primer: Sand back and recoat." in door.do
    assert step.verdict == "DOES NOT CONFORM"
    assert view.answer.startswith("Part of the work does not conform.")
    assert view.counted == "Items: 2. Conforming: 0; not conforming: 2; not decided: 0."


@pytest.mark.parametrize(
    "criterion", [OWN, PA_2, "{rule: ISO-19840, nominal: 60 um, max: 80 um, low_readings: at-most}"]
)
def test_every_text_is_in_the_catalogue(criterion: str) -> None:
    brackets = Brackets()
    _report(spots(50, 39, 70, 41), REST, "point,value\nwrong,=B2\n", criterion=criterion, locale=brackets.locale())
    assert brackets.unknown == set()


def test_a_plot_says_in_words_what_it_shows_and_marks_what_is_outside_by_shape() -> None:
    (lot,) = _report(spots(50, 36, 70)).lots
    every, films = lot.plots
    assert "1 spot is outside its limits" in every.text
    assert films.text == "How many readings of each film: 9 readings from 35\u00a0µm to 71\u00a0µm."
    for plot in lot.plots:
        assert re.search(r"<title>[^<]{30,}</title>", plot.drawing)
        # grey and ink alone
        assert set(re.findall(r"#[0-9a-f]{6}", plot.drawing)) <= {"#1b1d1f", "#d5d2d4", "#ffffff"}
    assert every.drawing.count("<circle") == 2
    assert every.drawing.count('fill="#ffffff"') == 1


def test_of_very_many_spots_those_outside_are_printed() -> None:
    count = MOST_SPOTS + 10
    (lot,) = _report(spots(*([60] * count), 30)).lots
    assert [row[0] for row in lot.spots.rows] == [f"DOOR {count + 1}"]
    assert str(count + 1) in lot.more
    assert len(lot.plots) == 1


CONCEDED = {
    "concessions": "[{id: thin, job: refit, items: [DOOR], point: primer-film, film_min: {specified: 40 um, conceded: 34 um},"
    " agreed_by: fleet, agreed_on: 2026-11-20, until: 2026-12-31, reason: Repainted in spring., record: NCR-7},"
    " {id: cool, job: refit, items: [DOOR, STEP], coat: base, air: {specified: min 15 degC, conceded: min 13 degC},"
    " agreed_by: fleet, agreed_on: 2026-10-20, until: 2026-11-20, reason: One cold night.}]"
}


def test_what_is_conceded_is_told_apart_counted_and_printed() -> None:
    brackets = Brackets()
    spec = spec_of(good_with({f"{FILM}.criterion": OWN, **CHANGES, **CONCEDED}, ()))
    found = assessed(spots(50, 39, 70), REST, changes={**CHANGES, **CONCEDED})
    view = _view(found, spec)
    (lot,) = view.lots
    assert (lot.verdict, lot.conceded) == ("not conforming", "DOOR under the concession thin")
    point = next(row for row in view.points[0].rows if row[0] == "Film of the primer")
    assert point[1] == "conforms under a concession"
    assert view.conceded == "Concessions of this job: 2; in force: 1; used here: 1."
    thin, cool = view.concessions.rows
    assert thin[0] == "thin\nNCR-7"
    assert thin[1:4] == (
        "minimum DFT\nat: Film of the primer\non: DOOR",
        "40\u00a0µm (1.6\u00a0mil)",
        "34\u00a0µm (1.3\u00a0mil)",
    )
    assert thin[4:] == (
        "by fleet on 2026-11-20, until 2026-12-31",
        "Repainted in spring.",
        "DOOR: Film of the primer",
    )
    assert cool[1] == "air temperature\ncoat: 2 basecoat\non: DOOR, STEP"
    assert cool[-1] == "not in force on the day of this report"
    _view(found, spec, brackets.locale())
    assert brackets.unknown == set()


def test_the_demo_s_readings_pass_one_rule_and_fail_another() -> None:
    spec = load(DEMO).spec
    assert spec is not None
    files = [File(file.name, file.read_bytes()) for file in sorted((DEMO / "readings").glob("tower-wagon-doors-*.csv"))]
    found = assessed_job(spec, "tower-wagon-doors", files, Asked({"value": "Thickness"}))
    view = _view(found, spec)
    assert [line.verdict for line in view.items] == ["conforms", "conforms under a concession", "conforms"]
    primer = view.lots[0]
    assert (primer.verdict, primer.accepted) == ("conforming", "every spot measurement from 40\u00a0µm to 80\u00a0µm")
    others = {row[0]: row[1:] for row in primer.others.rows}
    assert others["every reading within the limits"][0] == "not conforming"
    assert (
        "a reading of 38.4\u00a0µm is below 40\u00a0µm (DOOR 2 C, SKIRT 3 2)"
        in others["every reading within the limits"][1]
    )
    assert [picture.alternative for picture in view.marks.pictures] == [
        spec.jobs["tower-wagon-doors"].items[0].figures[0].alternative_text
    ]
    assert [row[0] for row in view.marks.read.rows[:5]] == [f"DOOR 1 {letter}" for letter in "ABCDE"]
    pages = print_conformity(found, spec)
    assert list(pages) == ["CR-MS-3107-conformity-report.pdf", "CR-MS-3107-conformity-report.html"]
    page = pages["CR-MS-3107-conformity-report.html"].decode()
    # a record of what was found instructs nobody
    assert "do not work to this document" not in page
    assert "DRAFT, not issued" in page
    assert page.index("conforms under a concession") < page.index('<h2 id="section-2">')


def test_a_coat_that_came_too_early_is_told_on_the_first_page_and_a_repair_with_what_was_found_before_it() -> None:
    rows = (
        "point,item,part,spot,coat,value,unit,work,remark,on,by\n"
        ",DOOR,,,primer,,,application,,2026-11-16 09:00,tb\n"
        ",DOOR,,,base,,,application,,2026-11-16 09:20,tb\n"
        "primer-film,DOOR,1,A,,90,um,,,2026-11-17,ka\n"
        "primer-film,DOOR,1,A,,,,repair,sanded back,2026-11-18,tb\n"
        "primer-film,DOOR,1,A,,60,um,,,2026-11-19,ka\n"
    )
    found = assessed(rows)
    view = conformity_report(found, context(spec_of(good_with({}, ()))))
    door = next(line for line in view.items if line.item == "DOOR")
    plain = [text.replace("\N{NO-BREAK SPACE}", " ") for text in door.why]
    assert "Primer to basecoat: 20 min at most, required: at least 30 min." in plain
    (repaired,) = [row for row in view.repaired.rows if row[1] == "Film of the primer"]
    assert "90" in str(repaired[2])
    assert "sanded back" in str(repaired[3])
    times = next(row for row in view.times.rows if row[:2] == ("DOOR", "primer to basecoat"))
    assert times[4] == "not conforming"
