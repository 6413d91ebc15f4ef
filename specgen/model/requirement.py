"""What a coat requires of a product that is not chosen yet: generic type, solids, colour, gloss, VOC, tests, and what may take its place.

The coat type, the film, the method and the thinner are the layer's own. `stand_in` is what the rules judge until a product is named.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from specgen.model.declaring import Concern, Polarity, entries, leaf, part
from specgen.model.field_types import GlossRange, Id, ShareRange, Text, VocContent, choice, listed
from specgen.model.node import Node
from specgen.model.product import Colour, CuringKind, PackForm
from specgen.model.test_required import RequiredTest


class Requirement(Node):
    """What a product must be and show. What is left out is left open."""

    generic_type: Annotated[str, listed("binder_families")] | None = leaf(
        Polarity.REPLACED, Concern.PRODUCT, "generic type required, an id of the table binder_families"
    )
    solids: ShareRange | None = leaf(
        Polarity.WITHIN, Concern.FILM, "volume solids required, without propellant, as in min 60 %"
    )
    colour: Colour | None = part("colour required, by a colour standard")
    gloss: GlossRange | None = leaf(
        Polarity.WITHIN, Concern.ACCEPTANCE, "gloss required at 60 degrees, as in 80..90 GU"
    )
    voc: VocContent | None = leaf(Polarity.AT_MOST, Concern.SAFETY, "maximum VOC content, ready for use")
    curing: Annotated[CuringKind, choice(CuringKind)] | None = leaf(
        Polarity.REPLACED, Concern.PRODUCT, "curing mechanism required"
    )
    pack: Annotated[PackForm, choice(PackForm)] | None = leaf(
        Polarity.REPLACED, Concern.PRODUCT, "form of the pack required: aerosol or liquid"
    )
    text: Text | None = leaf(
        Polarity.REQUIREMENT_TEXT, Concern.PRODUCT, "further requirements in words, as in free of copper"
    )
    tests: tuple[RequiredTest, ...] = entries("tests whose reports the supplier hands in")


class Alternative(Requirement):
    """Another product that is accepted as well. What it does not state is as the requirement beside it has it."""

    id: Id = leaf(Polarity.SCOPE, Concern.PRODUCT, "id of the alternative", required=True)


class Required(Requirement):
    """The requirement on the product of a coat, and the alternatives to it."""

    alternatives: tuple[Alternative, ...] = entries("other products accepted instead")

    def choices(self) -> Iterator[tuple[str, Requirement]]:
        """Each way to meet it: the requirement itself under an empty id, then the alternatives, each in full."""
        own = {name: getattr(self, name) for name in Requirement.model_fields if self.states(name)}
        yield "", Requirement.model_construct(**own)
        for other in self.alternatives:
            stated = {name: getattr(other, name) for name in Requirement.model_fields if other.states(name)}
            tests = {test.id: test for test in (*self.tests, *other.tests)}
            yield other.id, Requirement.model_construct(**own | stated | {"tests": tuple(tests.values())})
