"""How each product of a job is applied: its values by name, and what its curing kind asks for. Called by `method_statement`."""

from __future__ import annotations

from dataclasses import dataclass

from specgen.model.application import Activation, Application, Mixing
from specgen.model.product import Product
from specgen.units.quantity import Quantity
from specgen.units.rounding import plain_text
from specgen.views.wording import N_, Words


@dataclass(frozen=True, slots=True)
class ApplicationView:
    """A product at the part. `values` are (name, finished text); `texts` are (heading, author's words), in the order of work."""

    name: str
    kind: str
    values: tuple[tuple[str, str], ...]
    texts: tuple[tuple[str, str], ...]
    drying: tuple[tuple[str, str], ...]
    pot_life: str
    shelf_life: str


_VALUES = (
    ("shake", N_("Shake, from the first rattle")),
    ("can_temperature", N_("Can or paint temperature")),
    ("panel_temperature", N_("Part temperature")),
    ("distance", N_("Distance to the part")),
    ("overlap", N_("Overlap of strokes")),
    ("cross_coats", N_("Passes, usual")),
    ("flash_between_passes", N_("Wait between passes")),
)
_BEFORE = (("nozzle", N_("Nozzle")),)
_AFTER = (
    ("clear_valve", N_("Clear the valve")),
    ("put_away", N_("Put away a part-used can")),
    ("restart", N_("Start a part-used can again")),
)


def application(product: Product, words: Words) -> ApplicationView:
    """The view of one product; what it does not state is left out."""
    stated = product.application
    values: list[tuple[str, str]] = []
    texts: list[tuple[str, str]] = []
    if stated is not None:
        values = [(words(name), text) for key, name in _VALUES if (text := _value(stated, key, words))]
        texts.extend(_mixing(stated.mixing, values, words))
        texts.extend(_activation(stated.activation, values, words))
        texts.extend((words(name), text) for key, name in (*_BEFORE, *_AFTER) if (text := getattr(stated, key)))
    drying = tuple(
        (words.word(entry.stage), _under(entry.time, words, entry.air, entry.humidity, entry.film))
        for entry in product.drying
    )
    pot = product.pot_life
    pot_text = _under(pot.time, words, pot.air, pot.volume) if pot is not None else ""
    return ApplicationView(
        product.name,
        words.word(product.curing),
        tuple(values),
        tuple(texts),
        drying,
        pot_text,
        words.phrase(product.shelf_life),
    )


def _value(stated: Application, key: str, words: Words) -> str:
    value = getattr(stated, key)
    return str(value) if isinstance(value, int) else words.phrase(value)


def _mixing(mixing: Mixing | None, values: list[tuple[str, str]], words: Words) -> list[tuple[str, str]]:
    if mixing is None:
        return []
    for ratio, name in ((mixing.ratio_by_volume, words("by volume")), (mixing.ratio_by_mass, words("by mass"))):
        if ratio is not None:
            values.append((words("Mixing ratio {}").format(name), " : ".join(plain_text(p) for p in ratio)))
    if mixing.induction is not None:
        values.append((words("Wait after mixing"), words.phrase(mixing.induction)))
    if mixing.thinner_max is not None:
        values.append((words("Thinner, at most by volume"), words.phrase(mixing.thinner_max)))
    pairs = (
        (words("Thinner"), mixing.thinner),
        (words("Stir"), mixing.stir),
        (words("Pot life runs from"), mixing.clock_starts),
    )
    return [(name, text) for name, text in pairs if text]


def _activation(activation: Activation | None, values: list[tuple[str, str]], words: Words) -> list[tuple[str, str]]:
    if activation is None:
        return []
    if activation.shake_after is not None:
        values.append((words("Shake after releasing the hardener"), words.phrase(activation.shake_after)))
    if activation.usable_for is not None:
        values.append((words("Use the can up within"), words.phrase(activation.usable_for)))
    return [(words("Release the hardener"), activation.act)] if activation.act else []


def _under(time: Quantity, words: Words, *conditions: Quantity | None) -> str:
    """`20 min at 20 °C, 50 %`: a time with the conditions it holds for."""
    stated = ", ".join(words.phrase(condition) for condition in conditions if condition is not None)
    return words("{time} at {conditions}").format(time=words.phrase(time), conditions=stated)
