"""Ventilation for the spraying of a job: what the explosive limit requires, what the exposure limits require, and re-entry.

All of it is one record and is printed together, for the flow that keeps off an explosion is far too small to breathe.
It is a model of a room whose air mixes and no substitute for a measurement. Called by the rules on air and by the
documents of a job.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from functools import partial
from typing import Literal, NamedTuple

from specgen.facts.product.hazard_facts import is_water, isocyanates_in
from specgen.model.job import Job, WorkAir
from specgen.model.product import Ingredient, Product
from specgen.model.spec import Spec
from specgen.standards.citations import ARITHMETIC, PRACTICE
from specgen.standards.tables import table
from specgen.trade.exposure import ExposureLimit, has_own_limits, law_above, laws_with_limits
from specgen.trade.exposure_flow import Vapour, isocyanate, vapour_of
from specgen.trade.given import Given, Source, amount, from_table, take
from specgen.trade.known import NotKnown, worked_out
from specgen.trade.room import (
    POSTED_TIME_DECIDES,
    ReEntry,
    Remaining,
    clearing_time_of_index,
    posted_clearance,
    re_entry,
    usual_clearance,
)
from specgen.trade.vapour import mixing_factor
from specgen.trade.ventilation import AirFlow, air_flow, share_for_spraying
from specgen.trade.working import Input, Working, work
from specgen.units.locale import N_, phrase
from specgen.units.quantity import Quantity

_BACK_IN = "re-entry time"
_NO_ROOM = NotKnown(_BACK_IN, "room volume and fresh-air flow are not both stated", ("room volume", "air flow"))


class FlowAsked(NamedTuple):
    """Fresh air one limit asks for, in m3/h. Solvents are numbered from 1, so that none is named; 0 for what is none."""

    use: Literal["explosion", "solvent", "vapours", "isocyanate", "all"]
    flow: Working | NotKnown
    limit: ExposureLimit | None = None
    solvent: int = 0

    @property
    def shown_limit(self) -> Quantity | None:
        """The figure of the limit where it is that of a whole group; any other would name a solvent."""
        return self.limit.concentration if self.limit is not None and self.limit.as_nco else None


class ProductAir(NamedTuple):
    """Air for one product of a job under one law.

    `isocyanates` is True where it holds isocyanate or nobody knows.
    `spraying` goes by `share`, the share of the lower explosive limit in % under this law, `shipyard` by a tenth; both
    hold the flows for the limits of exposure as well. `stated` is the fresh air the job states. `re_entry` counts each
    vapour by itself, `together` the sum of all over their limits, which always takes longer; neither counts mist.
    """

    product: str
    jurisdiction: str
    isocyanates: bool
    share: str
    stated: Given | Working | NotKnown
    spraying: AirFlow | NotKnown
    shipyard: AirFlow | NotKnown
    re_entry: ReEntry | NotKnown
    together: Working | NotKnown

    @property
    def lent_by(self) -> str:
        """The law whose limits stand in for those this one has not; empty where it has its own for all."""
        limits = (asked.limit for asked in self.flows() if asked.limit is not None)
        return next((limit.jurisdiction for limit in limits if limit.jurisdiction != self.jurisdiction), "")

    @property
    def binding(self) -> tuple[Working, ...]:
        """The flows that a binding limit asks for; what is indicative or recommended is no law by itself."""
        asked = (entry for entry in self.flows() if entry.limit is not None and entry.limit.binding)
        return tuple(entry.flow for entry in asked if isinstance(entry.flow, Working))

    @property
    def back_in(self) -> Working | None:
        """The time of the vapour that may be told; None where it is not known, or where the posted clearance time decides.

        That is so of isocyanate, whose mist is in no figure, and of a time not above the one an open workshop usually
        takes: it would be read as leave to go in at once.
        """
        time = None if isinstance(self.together, NotKnown) or self.isocyanates else self.together
        return time if time is not None and time.number > usual_clearance() else None

    def flows(self) -> tuple[FlowAsked, ...]:
        """What each limit asks for at spraying, the explosive limit first and the largest of all last; empty where not known."""
        flow = self.spraying
        if isinstance(flow, NotKnown):
            return ()
        solvents = {name: number for number, name in enumerate(dict.fromkeys(e.substance for e in flow.each), 1)}
        ranked = sorted(flow.each, key=lambda entry: solvents[entry.substance])
        return (
            FlowAsked("explosion", flow.explosion),
            *(FlowAsked("solvent", entry.flow, entry.limit, solvents[entry.substance]) for entry in ranked),
            FlowAsked("vapours", flow.together),
            *(FlowAsked("isocyanate", entry.flow, entry.limit) for entry in flow.nco),
            FlowAsked("all", flow.needed),
        )


class _Part(NamedTuple):
    """What evaporates of a product, and by which shares of its mass: that of the contents, and what curing lets off."""

    id: str
    name: str
    cas: str
    shares: tuple[Given, ...]
    burns: bool | None


class LawOfAir(NamedTuple):
    """Whether limits under a law are in the tables, and whose stand in where it has none of its own; empty for nobody's."""

    law: str
    has_limits: bool
    lender: str


def laws_of_air(jurisdictions: Sequence[str], listed: Sequence[ProductAir]) -> tuple[LawOfAir, ...]:
    """Each law named, with whose limits the air in `listed` goes by."""
    lent = {entry.jurisdiction for entry in listed if entry.lent_by}
    return tuple(
        LawOfAir(
            law,
            has_own_limits(law) or bool(law_above(law)),
            law_above(law) if law in lent or not has_own_limits(law) else "",
        )
        for law in jurisdictions
    )


def times_over_explosion(listed: Sequence[ProductAir]) -> tuple[str, Working] | None:
    """How many times the air of the explosive limit the lungs ask for, with the product that asks for the most; None where not known."""
    times = [(entry.product, entry.spraying.times) for entry in listed if not isinstance(entry.spraying, NotKnown)]
    known = ((product, time) for product, time in times if isinstance(time, Working))
    return max(known, key=lambda one: one[1].number, default=None)


def unmeasured_clearance() -> str:
    """How long to wait where the clearance time is neither measured nor posted, as `30 min`. Source: the table clearance_times."""
    return posted_clearance("open workshop, not measured")


def air_of_job(job: Job, spec: Spec, on: date) -> tuple[ProductAir, ...]:
    """One entry for each product and law; empty where the job says nothing of its air.

    `on` is the day whose limits of exposure hold.
    """
    if job.ventilation is None:
        return ()
    return tuple(
        _of_product(job, job.ventilation, product, jurisdiction, on)
        for product in spec.products_of(job)
        for jurisdiction in laws_with_limits(spec.project.jurisdictions)
    )


def stated_flow(job: Job, air: WorkAir) -> Given | Working | NotKnown:
    """The fresh air a job states in m3/h, or room times changes."""
    path = f"jobs.{job.id}.ventilation"
    if air.flow is not None:
        return Given(air.flow, f"{path}.flow")
    if air.changes is None or air.room is None:
        missing = () if air.changes is None else ("room volume",)
        return NotKnown(
            "fresh-air flow",
            "neither the fresh-air flow nor the air changes per hour are stated",
            missing or ("air flow",),
        )
    inputs = (
        take("n", "air changes per hour", Given(air.changes, f"{path}.changes")),
        take("V", "room volume", Given(air.room, f"{path}.room"), "room_volume", "m3"),
    )
    key, source = f"air.{job.id}/stated", ARITHMETIC
    return work(key, "fresh-air flow", "n * V", inputs, kind="air_flow", unit="m3/h", places=0, source=source)


def rough_explosion_flow(job: Job, air: WorkAir, product: Product, jurisdiction: str) -> Working | NotKnown:
    """Fresh air against explosion by the stated VOC content, for a product whose composition names no volatile component."""
    what, voc = N_("fresh-air flow against explosion, rough"), product.voc
    if voc is None or voc.content is None or voc.density is None:
        return NotKnown(what, "VOC content and density are not both stated", ("VOC content", "density"))
    if air.spraying_rate is None:
        return NotKnown(what, "the quantity sprayed per hour is not stated", ("spraying rate",))
    path, shares, general = f"products.{product.id}.voc", "explosive_limit_shares", "vapour_in_general"
    rate = Given(air.spraying_rate, f"jobs.{job.id}.ventilation.spraying_rate")
    inputs = (
        take("m", "contents sprayed", rate, "release_rate", "g/h"),
        take("c", "VOC content", Given(voc.content, f"{path}.content"), "voc_content", "g/L"),
        take("d", "density", Given(voc.density, f"{path}.density"), "density", "g/mL"),
        mixing_factor(_mixing(job, air)),
        take("L", "lower explosive limit", from_table(general, table(general).rows[0], "limit_g_m3")),
        take("s", "share of it, in %", from_table(shares, share_for_spraying(jurisdiction), "share")),
    )
    formula, key = "m * c / (1000 * d) * K / (L * s / 100)", f"air.{job.id}.{product.id}.{jurisdiction}/rough"
    note = N_("1000: mL in a litre; 100: percent")
    return work(key, what, formula, inputs, kind="air_flow", unit="m3/h", places=0, source=PRACTICE, note=note)


def _of_product(job: Job, air: WorkAir, product: Product, jurisdiction: str, on: date) -> ProductAir:
    key = f"air.{job.id}.{product.id}.{jurisdiction}"
    stated = stated_flow(job, air)
    # Unknown counts as held: the caution then stands, and the flow cannot be judged.
    held = isocyanates_in(product) is not False
    vapours = _vapours(key, job, air, product, jurisdiction, on)
    share = share_for_spraying(jurisdiction)
    found = partial(ProductAir, product.id, jurisdiction, held, share["share"], stated)
    if isinstance(vapours, NotKnown):
        return found(vapours, vapours, vapours, vapours)
    mixing = _mixing(job, air)
    nco = isocyanate(None, jurisdiction, on) if held else None
    spraying, shipyard = (
        air_flow(f"{key}/{name}", vapours, mixing, isocyanates=nco, share=row)
        for name, row in (("spraying", share["id"]), ("shipyard", "shipyard"))
    )
    remaining = _remaining(key, air, vapours, stated, mixing, isocyanates=held)
    if isinstance(remaining, NotKnown) or isinstance(stated, NotKnown) or air.room is None:
        why = (
            remaining
            if isinstance(remaining, NotKnown)
            else NotKnown(_BACK_IN, "room volume or fresh-air flow is missing", ("room volume", "air flow"))
        )
        return found(spraying, shipyard, why, why)
    room = Given(air.room, f"jobs.{job.id}.ventilation.room")
    entry = re_entry(f"{key}/entry", remaining, stated, room, mixing, isocyanates=False)
    together = _together(f"{key}/together", remaining, stated, room, mixing)
    return found(spraying, shipyard, entry, together)


def _mixing(job: Job, air: WorkAir) -> Given:
    if air.mixing is not None:
        return Given(air.mixing, f"jobs.{job.id}.ventilation.mixing")
    return from_table("mixing_factors", table("mixing_factors").row("id", "typical, at least"), "factor")


def _vapours(
    key: str, job: Job, air: WorkAir, product: Product, jurisdiction: str, on: date
) -> tuple[Vapour, ...] | NotKnown:
    what = N_("vapour emitted")
    volatile = [line for line in product.composition if line.kind is not Ingredient.SOLIDS and not is_water(line)]
    if air.spraying_rate is None:
        return NotKnown(what, "the quantity sprayed per hour is not stated", ("spraying rate",))
    if not volatile:
        return NotKnown(what, f"the composition of {product.id} names no volatile component", ("composition",))
    rate = Given(air.spraying_rate, f"jobs.{job.id}.ventilation.spraying_rate")
    path = f"products.{product.id}"
    parts = [
        _Part(
            line.id,
            line.name,
            line.cas or "",
            (Given(line.mass_share, f"{path}.composition.{line.id}.mass_share", "maker"),),
            line.flammable,
        )
        for line in volatile
    ]
    # what a blocked hardener lets off is breathed in the same room, at the latest when the parts dry in it
    hazards = product.hazards
    if hazards is not None and hazards.cure_releases is not None and hazards.cure_release_share is not None:
        share = Given(hazards.cure_release_share, f"{path}.hazards.cure_release_share", "maker")
        parts = _with_release(parts, hazards.cure_releases, hazards.cure_release_cas or "", share)
    return tuple(
        vapour_of(part.name, part.cas, _emitted(f"{key}.{part.id}", part, rate), jurisdiction, on, part.burns)
        for part in parts
    )


def _with_release(parts: Sequence[_Part], name: str, cas: str, share: Given) -> list[_Part]:
    """A solvent of the paint that the hardener lets off too is one vapour of one limit: its shares count together."""
    same = [part for part in parts if (cas and part.cas == cas) or part.name == name]
    if not same:
        return [*parts, _Part("cure-release", name, cas, (share,), None)]
    return [part._replace(shares=(*part.shares, share)) if part is same[0] else part for part in parts]


def _emitted(key: str, part: _Part, rate: Given) -> Working:
    of = phrase("{name}, share by mass", name=part.name)
    symbols = ["w"] if len(part.shares) == 1 else [f"w_{number}" for number in range(1, len(part.shares) + 1)]
    inputs = (
        take("m", "contents sprayed", rate, "release_rate", "g/h"),
        *(take(symbol, of, share, "share", "%") for symbol, share in zip(symbols, part.shares, strict=True)),
    )
    whole = symbols[0] if len(symbols) == 1 else f"({' + '.join(symbols)})"
    return work(
        key,
        phrase("{name} emitted", name=part.name),
        f"m * {whole} / 100",
        inputs,
        kind="release_rate",
        unit="g/h",
        places=0,
        source=ARITHMETIC,
        note="100: percent",
    )


def _remaining(
    key: str,
    air: WorkAir,
    vapours: tuple[Vapour, ...],
    stated: Given | Working | NotKnown,
    mixing: Source,
    *,
    isocyanates: bool,
) -> tuple[Remaining, ...] | NotKnown:
    """What hangs in the room at the worst when the work ends, each vapour against each of its 8 h limits."""
    what = _BACK_IN
    if isocyanates:
        return NotKnown(what, POSTED_TIME_DECIDES, ("clearance time of the booth",))
    if isinstance(stated, NotKnown) or air.room is None:
        return _NO_ROOM
    remaining = []
    for number, vapour in enumerate(vapours, start=1):
        lasting = [limit for limit in vapour.limits if limit.lasting]
        if not lasting:
            return NotKnown(what, f"no 8 h TWA limit of {vapour.name} was read", (f"8 h TWA limit of {vapour.name}",))
        work_out = partial(_steady, f"{key}/steady-{number}", vapour, stated, mixing)
        highest = worked_out(what, work_out, missing=("air flow",))
        if isinstance(highest, NotKnown):
            return highest
        remaining += [Remaining(vapour.name, highest, limit, vapour.molar_mass) for limit in lasting]
    return tuple(remaining)


def _together(
    key: str, remaining: Sequence[Remaining], stated: Source, room: Source, mixing: Source
) -> Working | NotKnown:
    """Minutes until the sum of all vapours over their lowest 8 h limits is 1: their effects are taken to add up."""
    lowest: dict[str, tuple[Source, Source]] = {}
    for number, entry in enumerate(remaining, start=1):
        limit = entry.limit.in_air(f"{key}/limit-{number}", entry.molar_mass)
        if isinstance(limit, NotKnown):
            return limit
        known = lowest.get(entry.substance)
        if known is None or _size(limit) < _size(known[1]):
            lowest[entry.substance] = (entry.concentration, limit)
    inputs: list[Input] = []
    for number, (name, (highest, least)) in enumerate(lowest.items(), start=1):
        inputs.append(take(f"C_{number}", phrase("{name} in the room", name=name), highest, "concentration", "mg/m3"))
        inputs.append(take(f"L_{number}", phrase("limit of {name}", name=name), least, "concentration", "mg/m3"))
    formula = " + ".join(f"C_{number} / L_{number}" for number in range(1, len(lowest) + 1))
    name = N_("sum of the ratios to the limits at the end of spraying")
    index = work(f"{key}/index", name, formula, tuple(inputs), places=3, source=ARITHMETIC)
    return clearing_time_of_index(key, index, 1, stated, room, mixing)


def _size(limit: Source) -> Quantity:
    found = amount(limit)
    assert isinstance(found, Quantity)  # noqa: S101  # a limit in air is a concentration
    return found


def _steady(key: str, vapour: Vapour, flow: Source, mixing: Source) -> Working:
    """The concentration a room comes to if the spraying goes on: the worst there can be when it ends."""
    inputs = (
        take("G", phrase("{name}, emitted", name=vapour.name), vapour.release, "release_rate", "mg/h"),
        mixing_factor(mixing),
        take("Q", "air flow", flow, "air_flow", "m3/h"),
    )
    name = phrase("{name} in the room, after long spraying", name=vapour.name)
    return work(key, name, "G * K / Q", inputs, kind="concentration", unit="mg/m3", places=1, source=ARITHMETIC)
