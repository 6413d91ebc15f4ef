"""Flammable share and heat of combustion of what is in a can, propellant included.

The contents are the maker's: hand shares over as `Given` with the audience "maker". Called by `aerosol`, by the rules on
hazards and by the maker's annex.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from specgen.standards.citations import Citation
from specgen.standards.tables import table
from specgen.trade.given import Source, amount, from_table, take, take_cell
from specgen.trade.physical import physical
from specgen.trade.solids import sum_of_shares
from specgen.trade.working import Input, Working, WorkingError, work
from specgen.units.locale import N_, phrase
from specgen.units.quantity import Quantity

_HEATS = "heat_of_combustion"
_PERCENT = N_("100: percent")
_NONE = N_("0: there is none")


class Content(NamedTuple):
    """One component of a can's contents: its share by mass of all contents, and what is known of it.

    `flammable` is None, and `heat` absent, where it is not known. `heat` is the theoretical net heat of combustion in
    kJ/g and is reduced by the efficiency; `tested` is True for a heat from a test, which is taken as it stands.
    """

    name: str
    share: Source
    flammable: bool | None = None
    heat: Source | None = None
    tested: bool = False
    source: Citation | None = None


def content_of(name: str, cas: str, share: Source) -> Content:
    """A solvent or propellant with its flammability from the table physical_data and its heat from heat_of_combustion.

    What the tables do not hold stays unknown: an unlisted number, a flash point or a heat that does not serve for
    classification.
    """
    row = next((row for row in table(_HEATS).rows if row["cas"] == cas), None)
    known = physical(cas)
    heat = from_table(_HEATS, row, "net_heat", "heat", "kJ/g") if row is not None and row["usable"] == "yes" else None
    source = table(_HEATS).row_citation(row) if row is not None else known.source if known is not None else None
    return Content(name, share, known.burns if known is not None else None, heat, source=source)


def flammable_share(id: str, contents: Sequence[Content]) -> Working:
    """Flammable components in % by mass of the contents, so far as they are known. Source: CLP Annex I, 2.3.2.1.

    Raises WorkingError where the shares do not add up to 100 %.
    """
    return _share(id, "flammable components", contents, lambda content: content.flammable is True)


def flammable_share_at_most(id: str, contents: Sequence[Content]) -> Working:
    """The same, with every component of which it is not known counted as flammable. Raises as `flammable_share`."""
    return _share(id, "flammable components at most", contents, lambda content: content.flammable is not False)


def heat_of_combustion(id: str, contents: Sequence[Content], efficiency: Source | None = None) -> Working:
    """Heat of combustion of the contents in kJ/g, by the mass-weighted sum; a component without a heat adds nothing.

    `efficiency` is a bare number, 0.95 where it is not given. The result is a lower bound while `without_heat` names
    anything. Source: CLP Annex I, 2.3.4. Raises WorkingError where the shares do not add up to 100 %.
    """
    shares = _shares(contents)
    terms, inputs, reduced = [], [], False
    for number, content in enumerate(contents, start=1):
        if content.heat is None:
            continue
        factor = "" if content.tested else "e * "
        reduced = reduced or not content.tested
        terms.append(f"{factor}w_{number} * H_{number}")
        inputs.append(shares[number - 1])
        inputs.append(
            take(f"H_{number}", phrase("{name}, heat of combustion", name=content.name), content.heat, "heat", "kJ/g")
        )
    if reduced:
        inputs.insert(0, _efficiency(efficiency))
    formula = f"({' + '.join(terms)}) / 100" if terms else "0"
    name = N_("heat of combustion, at least") if without_heat(contents) else N_("heat of combustion")
    source = table("combustion_efficiency").citation
    note = _PERCENT if terms else _NONE
    return work(id, name, formula, tuple(inputs), kind="heat", unit="kJ/g", places=2, source=source, note=note)


def without_heat(contents: Sequence[Content]) -> tuple[str, ...]:
    """The components whose heat of combustion is not known."""
    return tuple(content.name for content in contents if content.heat is None)


def without_flammability(contents: Sequence[Content]) -> tuple[str, ...]:
    """The components of which it is not known whether they are flammable."""
    return tuple(content.name for content in contents if content.flammable is None)


def _share(id: str, name: str, contents: Sequence[Content], counted: Callable[[Content], bool]) -> Working:
    shares = _shares(contents)
    inputs = tuple(share for share, content in zip(shares, contents, strict=True) if counted(content))
    formula = " + ".join(entry.symbol for entry in inputs) or "0"
    source = table("flammable_component").citation
    note = "" if inputs else _NONE
    return work(id, name, formula, inputs, kind="share", unit="%", places=1, source=source, note=note)


def _shares(contents: Sequence[Content]) -> list[Input]:
    inputs = [
        take(f"w_{n}", phrase("{name}, share by mass", name=c.name), c.share, "share", "%")
        for n, c in enumerate(contents, start=1)
    ]
    found = [value for content in contents if isinstance(value := amount(content.share), Quantity)]
    whole, rounding = sum_of_shares(found)
    if abs(whole.to("%") - 100) > rounding:
        raise WorkingError(f"the shares by mass add up to {whole}, not to 100 %")
    return inputs


def _efficiency(stated: Source | None) -> Input:
    if stated is not None:
        return take("e", "efficiency of combustion", stated)
    row = table("combustion_efficiency").row("id", "typical")
    return take_cell("e", "efficiency of combustion", "combustion_efficiency", row, "value")
