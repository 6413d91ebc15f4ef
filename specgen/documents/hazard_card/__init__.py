"""The hazard card: one side in large type that hangs at the vehicle."""

from specgen.documents.hazard_card.view import CUTS, TOO_MUCH, hazard_card
from specgen.documents.kind import Kind, Sides

KIND = Kind(
    name="hazard-card",
    place=3,
    about="job",
    formats=("pdf",),
    view=hazard_card,
    sides=Sides(
        cuts=CUTS,
        count=lambda _job, _spec: 1,
        view=hazard_card,
        pages=lambda _: 1,
        too_much=lambda _: TOO_MUCH,
    ),
    issued=True,
)
