"""Every candidate on tests and evidence is a rule, or is listed with the reason; and the facts of the trade are told as they should be.

The check values are common practice without a source: they stand here alone, never in a demonstration.
"""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml

from specgen.facts.tests.colour_stated import changes_said
from specgen.facts.tests.outcome import Outcome, judged
from specgen.facts.tests.values import fits, limit_fits, meets
from specgen.model.test_report import DoneTest, SpecimenResult
from specgen.model.test_required import AskedTest, Statistic
from specgen.model.test_value import read_limit, read_result
from specgen.rules.declare import all_rules
from tests.good_spec import checked, given, put

HERE = Path(__file__).parent
CANDIDATES: dict[str, str | list[str]] = yaml.safe_load((HERE / "testing_candidates.yaml").read_text("utf-8"))
LISTED = (HERE.parents[1] / "DEVELOPERS.md").read_text("utf-8").partition("## Rule candidates that are not rules")[2]
NUMBERS = {"TU": 19, "TM": 26, "TS": 8, "TE": 9, "TD": 24, "TX": 13}


def test_all_99_are_there() -> None:
    wanted = {f"{family}-{number:02}" for family, most in NUMBERS.items() for number in range(1, most + 1)}
    assert set(CANDIDATES) == wanted
    assert len(wanted) == 99


@pytest.mark.parametrize("candidate", CANDIDATES)
def test_a_candidate_is_a_rule_or_is_listed(candidate: str) -> None:
    said = CANDIDATES[candidate]
    if isinstance(said, list):
        assert said
        assert set(said) <= {rule.id for rule in all_rules()}
    else:
        firsts = [line.split("|")[1] for line in LISTED.partition("\n## ")[0].splitlines() if line.startswith("| ")]
        assert any(said in first for first in firsts)


# What a data sheet says, of which generic type, the rules that tell it, and words that have to be among what they tell.
FACTS = [
    (
        "Epoxy primer: 1000 h of neutral salt spray; alkyd primer 160 h of salt spray, acrylic primer 80 h of salt spray.",
        "epoxy_2k",
        {"TST009"},
        "unequal hours",
    ),
    (
        "Epoxy primer: 1000 h of neutral salt spray; alkyd primer 160 h of salt spray, acrylic primer 80 h of salt spray.",
        "epoxy_2k",
        {"TST009"},
        "without what was found after them",
    ),
    ("Pull-off adhesion 150 to 160 psi on steel.", "epoxy_2k", {"TST003"}, "lies below what is usual"),
    ("Pull-off adhesion 150 to 160 psi on steel.", "epoxy_2k", {"TST003"}, "as bar, kgf/cm2"),
    ("Pull-off adhesion 150 to 160 psi on steel.", "epoxy_2k", {"TST003"}, "zero lost"),
    ("Pendulum hardness 35 to 50 swings.", "oil_alkyd", {"TST016"}, "König's or Persoz's"),
    ("Pendulum hardness 70 swings.", "acrylic_1k", {"TST016"}, "König's or Persoz's"),
    ("Pendulum hardness 150 to 180 swings.", "epoxy_2k", {"TST003", "TST016"}, "calibration glass"),
    ("Pendulum hardness 150 to 180 swings.", "epoxy_2k", {"TST003", "TST016"}, "as seconds"),
    ("Colour change after 600 h of fluorescent UV: 0.4.", "epoxy_2k", {"TST007", "TST010"}, "the formula"),
    (
        "Colour change after 600 h of fluorescent UV: 0.4.",
        "epoxy_2k",
        {"TST007", "TST010"},
        "gloss and chalking are not",
    ),
    ("Colour change after 600 h of fluorescent UV: 0.7.", "acrylic_1k", {"TST007", "TST010"}, "the lamp"),
    (
        "Colour change after 600 h of fluorescent UV: 0.7.",
        "acrylic_1k",
        {"TST007", "TST010"},
        "nor the cycle nor what became of the gloss",
    ),
    (
        "Colour change after 600 h of fluorescent UV: 0.4.",
        "epoxy_2k",
        {"TST007", "TST010"},
        "a colour change of 0.4 after light lies inside the spread of instruments, 0.7: it is no claim of resistance to weather",
    ),
    (
        "Colour change after 600 h of fluorescent UV 0.4 for an epoxy and 0.7 for an acrylic.",
        "acrylic_1k",
        {"TST007", "TST010"},
        "a colour change of 0.7 after light lies inside the spread of instruments, 0.7: it is no claim of resistance to weather",
    ),
    ("Gloss 90 to 100 at 60 degrees.", "pu_2k_aliphatic", {"TST003", "TST008"}, "at 20 degrees"),
    ("Gloss 90 to 100 at 60 degrees.", "pu_2k_aliphatic", {"TST003", "TST008"}, "at most 97 GU"),
    ("Dust-dry after 15 to 25 min, touch-dry after 1 h.", "epoxy_2k", {"TST017"}, "no temperature and no film"),
]


@pytest.mark.parametrize(("text", "family", "rules", "words"), FACTS, ids=[f"{said[0]} {said[3]}" for said in FACTS])
def test_a_fact_of_the_trade_is_told(text: str, family: str, rules: set[str], words: str) -> None:
    spec = given("")
    put(spec, "products.barrier.binder", family)
    put(spec, "products.barrier.about", f'"{text}"')
    told = [one for one in checked(spec).report if one.path == "products.barrier.about" and one.id.startswith("TST")]
    assert {one.id for one in told} == rules
    assert any(words in one.what for one in told), [one.what for one in told]


# Criteria of published government paint specifications as they are read: method, limit, standard, a result that passes, one that fails.
PUBLISHED = [
    ("A-A-52474B, cross-cut with top coat", "cross_cut", "min 4B", "ASTM D3359 method B", "5B", "3B"),
    ("A-A-52474B, knife", "x_cut", "10", "ASTM D6677", "10", "8"),
    ("A-A-52474B, rusting after 1000 h", "rust_grade", "min 8", "ASTM D610", "9", "7"),
    ("A-A-52474B, creep after 1000 h", "scribe_creep", "max 3.3 mm", "ASTM D1654", "0.12 in", "3.4 mm"),
    ("A-A-52474B, mandrel", "mandrel_cyl", "max 0.25 in", "ASTM D522 method B", "6.3 mm", "8 mm"),
    ("A-A-50557, blisters after 1000 h", "blistering", "max 6M", "ASTM D714", "8F", "4M"),
    ("A-A-713, touch-dry", "drying", "max 15 min", "ASTM D1640", "12 min", "0.3 h"),
    ("A-A-713, delivery", "aerosol_delivery", "min 99 %", "", "99.2 %", "98 %"),
    ("TT-C-490F, cross-cut", "cross_cut", "min 4B", "ASTM D3359", "4B", "3B"),
    ("TT-C-490F, cyclic, primer", "gmw14872", "min 40 cycles", "GMW14872", "40 cycles", "39 cycles"),
    ("TT-P-28H, salt spray", "nss", "min 96 h", "ASTM B117", "4 days", "95 h"),
    ("IMO PSPC, pull-off", "pull_off", "min 3.5 MPa", "ISO 4624", "3.6 MPa", "500 psi"),
    ("MIL-DTL-24441, pot life", "pot_life", "min 4 h", "", "4 h", "239 min"),
]


@pytest.mark.parametrize(
    ("name", "method", "limit", "standard", "good", "bad"), PUBLISHED, ids=[row[0] for row in PUBLISHED]
)
def test_a_published_criterion_is_read(name: str, method: str, limit: str, standard: str, good: str, bad: str) -> None:
    asked = read_limit(limit)
    assert list(limit_fits(method, asked, standard)) == []
    assert fits(method, read_result(good), standard) is None
    assert meets(method, read_result(good), asked, standard) is True
    assert meets(method, read_result(bad), asked, standard) is False


@pytest.mark.parametrize(
    ("sentence", "figures"),
    [
        ("Colour change after 600 h of fluorescent UV: 0.4", ("0.4",)),
        ("Colour change after 600 h of fluorescent UV 0.4 for an epoxy and 0.7 for an acrylic", ("0.4", "0.7")),
        ("Colour change: 2", ("2",)),
        ("After 1000 h at 0.89 W/m2 nm (ISO 16474-3 cycle 1) colour change 0.8 dE00, chalking 0.5", ("0.8",)),
        ("dE 1.2 in a film of 0.08 mm after 2 h at 5.0 °C", ("1.2",)),
        ("Colour change of less than 3 per cent, L* 52.1", ()),
        ("Creep of 0.7 after 600 h", ()),
    ],
)
def test_figures_of_a_colour_change_in_words(sentence: str, figures: tuple[str, ...]) -> None:
    assert changes_said(sentence) == figures


# L-T-80C, 4.4, a government specification that says it in words: where the requirement is a number the values are averaged, where it is
# an attribute the failure of one specimen fails.
@pytest.mark.parametrize(
    ("method", "standard", "limit", "results", "statistic", "met"),
    [
        ("scribe_creep", "ASTM D1654", "max 3.3 mm", ("2.9 mm", "3.6 mm", "3.1 mm"), Statistic.MEAN, True),
        ("scribe_creep", "ASTM D1654", "max 3.3 mm", ("3.2 mm", "3.6 mm", "3.4 mm"), Statistic.MEAN, False),
        ("rust_grade", "ASTM D610", "min 8", ("10", "9", "8"), Statistic.EACH, True),
        ("rust_grade", "ASTM D610", "min 8", ("10", "10", "7"), Statistic.EACH, False),
        ("cross_cut", "ASTM D3359", "min 4B", ("5B", "5B", "3B"), Statistic.EACH, False),
    ],
)
def test_numbers_are_averaged_and_of_ratings_each_passes(
    method: str, standard: str, limit: str, results: tuple[str, ...], statistic: Statistic, met: bool
) -> None:
    panels = tuple(SpecimenResult(id=f"P{at}", value=value) for at, value in enumerate(results))
    done = DoneTest(id="one", series="panels", method=method, standard=standard, results=panels)
    found = judged(AskedTest(method=method, standard=standard, limit=limit), done)
    assert (found.statistic, found.outcome is Outcome.MEETS) == (statistic, met)
