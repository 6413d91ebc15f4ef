"""Loss in its two conventions, which are never one number: a share of what is used, and a surplus on what would do.

40 % loss asks for 1.667 times the paint, 40 % surplus for 1.4 times. Each is a type of its own, so that neither
passes for the other. Called by `consumption` and `cans`, and by the rules on consumption.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from specgen.standards.citations import ARITHMETIC, Basis, cite
from specgen.trade.film import PERCENT
from specgen.trade.given import Source, take
from specgen.trade.working import Input, Working, WorkingError, work
from specgen.units.locale import N_, phrase

_MEAN = cite("40-CFR-60-313", "equation 3, form only", Basis.MEMORY)


class LossShare(NamedTuple):
    """Loss as a share of the paint used, in percent: of 100 L used at 40 % loss, 60 L reach the surface."""

    share: Source

    @property
    def factor(self) -> str:
        """What the paint on the surface is multiplied by, as a formula over `entry`."""
        return "100 / (100 - loss)"

    @property
    def reaching(self) -> str:
        """The part of the paint used that reaches the surface, as a formula over `entry`."""
        return "(100 - loss) / 100"

    def entry(self) -> Input:
        return take("loss", "loss, share of the paint used", self.share, "share", "%")


class Surplus(NamedTuple):
    """Surplus on the paint that would do without loss, in percent: 60 L on the surface at 40 % surplus take 84 L."""

    surplus: Source

    @property
    def factor(self) -> str:
        """What the paint on the surface is multiplied by, as a formula over `entry`."""
        return "(100 + alpha) / 100"

    @property
    def reaching(self) -> str:
        """The part of the paint used that reaches the surface, as a formula over `entry`."""
        return "100 / (100 + alpha)"

    def entry(self) -> Input:
        return take("alpha", "surplus on the paint on the surface", self.surplus, "percentage", "%")


Loss = LossShare | Surplus


def share_of_surplus(id: str, surplus: Surplus) -> Working:
    """The loss share that means the same as a surplus, in percent."""
    formula = "100 * alpha / (100 + alpha)"
    name = N_("loss, share of the paint used")
    return work(
        id, name, formula, (surplus.entry(),), kind="share", unit="%", places=1, source=ARITHMETIC, note=PERCENT
    )


def loss_of_transfer(id: str, transfer: Source) -> Working:
    """The loss share that a transfer efficiency leaves, in percent."""
    inputs = (take("TE", "transfer efficiency", transfer, "share", "%"),)
    name, formula = "loss, share of the paint used", "100 - TE"
    return work(id, name, formula, inputs, kind="share", unit="%", places=1, source=ARITHMETIC, note=PERCENT)


def mean_transfer(id: str, parts: Sequence[tuple[Source, Source, Source]]) -> Working:
    """Transfer efficiency of several methods together, in percent; each part is (volume, volume solids, transfer
    efficiency).

    A harmonic mean weighted by solids: what counts is the paint it took. Raises WorkingError for no solids, or where
    a method transfers nothing. Source: form of 40 CFR 60.313, from memory.
    """
    if not parts:
        raise WorkingError("no application method is stated")
    inputs: list[Input] = []
    solids, used = [], []
    for number, (volume, share, transfer) in enumerate(parts, start=1):
        inputs.append(take(f"V_{number}", phrase("volume by method {number}", number=number), volume, "volume", "L"))
        inputs.append(
            take(f"VS_{number}", phrase("volume solids, method {number}", number=number), share, "share", "%")
        )
        inputs.append(
            take(
                f"TE_{number}", phrase("transfer efficiency of method {number}", number=number), transfer, "share", "%"
            )
        )
        solids.append(f"V_{number} * VS_{number}")
        used.append(f"V_{number} * VS_{number} / TE_{number}")
    name, formula = "transfer efficiency, all methods", f"({' + '.join(solids)}) / ({' + '.join(used)})"
    return work(id, name, formula, tuple(inputs), kind="share", unit="%", places=1, source=_MEAN)
