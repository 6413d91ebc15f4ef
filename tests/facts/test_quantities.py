"""The figures of a job from the good specification and from changes to it: ids, packs, losses, profile, and what is told as not known."""

from __future__ import annotations

from fractions import Fraction

import pytest

from specgen.facts.job.quantities import Quantities, quantities
from tests.good_spec import good_with, spec_of

BLASTED = {
    "preparations.blast": "{id: blast, title: Blast, steps: [{id: blast, do: blast, text: Blast to an even profile.}]}",
    "jobs.refit.items.STEP.preparation": "blast",
}


def _figures(changes: dict[str, str] | None = None, out: tuple[str, ...] = ()) -> Quantities:
    spec = spec_of(good_with(changes, out))
    return quantities(spec.jobs["refit"], spec)


def test_every_working_has_an_id_of_its_own() -> None:
    ids = [working.id for working in _figures().workings()]
    assert ids == list(dict.fromkeys(ids))
    assert {key for key in ids if "packs" in key} == {
        "layer-packs.cab.primer",
        "layer-packs.cab.base",
        "layer-packs.cab.clear",
        "layer-packs.chassis.barrier",
        "litres-for-layer-packs.chassis.barrier",
        "litres-for-packs.barrier.standard",
        "packs.primer.grey",
        "packs.base.standard",
        "packs.clear.standard",
        "packs.barrier.standard",
    }


def test_packs_of_the_good_job() -> None:
    packs = {key: working.printed() for key, working in _figures().packs.items()}
    assert packs == {
        ("primer", "grey"): "2\N{NO-BREAK SPACE}cans",
        ("base", "standard"): "1\N{NO-BREAK SPACE}can",
        ("clear", "standard"): "2\N{NO-BREAK SPACE}cans",
        ("barrier", "standard"): "1\N{NO-BREAK SPACE}tin",
    }


# 0.48 m2 at 80 um and 50 % volume solids: 0.0768 L on the part, and what the loss makes of it
@pytest.mark.parametrize(
    ("consumption", "litres"),
    [
        ("{transfer_efficiency: 60 %}", "0.128"),
        ("{transfer_efficiency: 60 %, loss_share: 20 %}", "0.096"),
        ("{transfer_efficiency: 60 %, loss_surplus: 50 %}", "0.1152"),
    ],
)
def test_litres_with_loss_in_either_convention(consumption: str, litres: str) -> None:
    assert _litres(_figures({"jobs.refit.consumption": consumption})) == litres


@pytest.mark.parametrize(
    ("convention", "litres"),
    # 40, 35 and 60 um of dry film in the profile come on top of the 80 um
    [("by-roughness", "0.192"), ("by-band", "0.184"), ("whole-profile", "0.224")],
)
def test_profile_is_charged_to_the_first_coat_on_a_blasted_item(convention: str, litres: str) -> None:
    consumption = f"{{transfer_efficiency: 60 %, profile: 60 um, dead_volume: {convention}}}"
    assert _litres(_figures({"jobs.refit.consumption": consumption, **BLASTED})) == litres
    assert _litres(_figures({"jobs.refit.consumption": consumption})) == "0.128"


def test_profile_does_not_touch_a_later_coat() -> None:
    consumption = "{transfer_efficiency: 60 %, profile: 60 um, dead_volume: by-roughness}"
    before, after = (
        _figures(),
        _figures(
            {
                "jobs.refit.consumption": consumption,
                "jobs.refit.preparation": "blast",
                "preparations.blast": BLASTED["preparations.blast"],
            }
        ),
    )
    assert len(after.layer_packs["cab", "primer"].inputs) == len(before.layer_packs["cab", "primer"].inputs) + 2
    assert after.layer_packs["cab", "clear"] == before.layer_packs["cab", "clear"]


# Where, why, and what is missing.
Told = tuple[tuple[str, ...], str, tuple[str, ...]]

NOT_KNOWN: list[tuple[str, dict[str, str], tuple[str, ...], list[Told]]] = [
    (
        "masked",
        {"jobs.refit.items.DOOR.masked": "[{id: all, what: all of it, area: 2 m2}]"},
        (),
        [
            (("jobs", "refit", "items", "DOOR"), "the masked area is larger than the piece", ()),
        ],
    ),
    (
        "size",
        {},
        ("jobs.refit.items.DOOR.shapes.skin.width",),
        [
            (("jobs", "refit", "items", "DOOR", "shapes", "skin", "width"), "the plate skin has no width", ("width",)),
        ],
    ),
    (
        "composition",
        {"products.primer.composition.gas.mass_share": "20 %"},
        (),
        [
            (("products", "primer", "composition"), "the shares by mass add up to 90 %, not to 100 %", ()),
        ],
    ),
    (
        "no solids",
        {"products.primer.composition.solids.mass_share": "0 %", "products.primer.composition.gas.mass_share": "60 %"},
        (),
        [
            (("products", "primer", "composition"), "the composition contains no solids", ()),
        ],
    ),
    (
        "solids of zero",
        {"products.base.solids": "{in_can: 0 %, sprayed: 0 %}"},
        (),
        [
            (("products", "base", "solids", "sprayed"), "volume solids are zero; they must be above zero", ()),
            (("products", "base", "solids", "in_can"), "volume solids are zero; they must be above zero", ()),
        ],
    ),
    (
        "fill of a variant",
        {"products.clear.variants.standard.fill": "0 mL"},
        (),
        [
            (("products", "clear", "variants", "standard", "fill"), "an empty pack covers no area", ()),
        ],
    ),
    (
        "dispensed",
        {"products.clear.pack.dispensed": "0 %"},
        (),
        [
            (("products", "clear", "pack", "dispensed"), "a can that dispenses nothing covers no area", ()),
        ],
    ),
    (
        "transfer",
        {},
        ("jobs.refit.consumption",),
        [
            (
                ("jobs", "refit", "consumption", "transfer_efficiency"),
                "the transfer efficiency of the job is not stated",
                ("transfer efficiency",),
            ),
        ],
    ),
    (
        "profile beyond the table",
        {"jobs.refit.consumption": "{transfer_efficiency: 60 %, profile: 400 um, dead_volume: by-band}"},
        (),
        [
            (
                ("jobs", "refit", "consumption", "profile"),
                "a profile of 400 um is outside the table, which ends at 300 um",
                (),
            ),
        ],
    ),
]


@pytest.mark.parametrize(
    ("changes", "out", "told"), [row[1:] for row in NOT_KNOWN], ids=[str(row[0]) for row in NOT_KNOWN]
)
def test_what_is_not_known_is_told_once_and_at_its_place(
    changes: dict[str, str], out: tuple[str, ...], told: list[Told]
) -> None:
    assert [(gap.at, gap.why, gap.missing) for gap in _figures(changes, out).not_known] == told


def test_shares_rounded_by_their_author_add_up() -> None:
    changes = {
        "products.primer.composition.solids.mass_share": "33.3 %",
        "products.primer.composition.solvent.mass_share": "33.3 %",
        "products.primer.composition.gas.mass_share": "33.3 %",
    }
    assert _figures(changes).not_known == []


def _litres(figures: Quantities) -> str:
    amount = next(w for w in figures.supporting if w.id == "litres-for-layer-packs.chassis.barrier")
    return f"{float(amount.number):.6f}".rstrip("0")


def test_many_shapes_and_items_are_summed_to_the_last() -> None:
    shapes = ", ".join(f"{{id: s{n}, kind: plate, length: 100 mm, width: 100 mm, sides: 1}}" for n in range(1, 31))
    found = _figures(
        {
            "jobs.refit.items.DOOR": f"{{id: DOOR, name: Door, count: 1, shapes: [{shapes}]}}",
            "jobs.refit.items.HATCH": "{id: HATCH, name: Hatch, count: 3, area: 0.5 m2}",
        }
    )
    # thirty plates of 0.01 m2; with three hatches of 0.5 m2 the system cab covers 1.8 m2
    assert found.areas["DOOR"].number == Fraction("0.3")
    assert {entry.id: entry.number for entry in found.workings()}["area-of.cab"] == Fraction("1.8")


def test_a_coat_that_is_the_only_one_of_its_product_is_told_once() -> None:
    """Two coats of the base: each keeps its own need beside that of the product."""
    told = {working.id for working in _figures().told_once()}
    assert not any(name.startswith(("layer-packs.", "litres-for-layer-packs.")) for name in told)
    assert {"packs.base.standard", "packs.barrier.standard"} <= told
    second = _figures({"systems.cab.layers.clear.product": "base", "systems.cab.layers.clear.variant": "standard"})
    own = {working.id for working in second.told_once() if working.id.startswith("layer-packs.")}
    assert own == {"layer-packs.cab.base", "layer-packs.cab.clear"}
    assert set(second.told_once()) <= set(second.workings())
