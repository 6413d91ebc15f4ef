"""The hazard card: in large type, hangs at the vehicle."""

from specgen.documents.hazard_card.view import hazard_card
from specgen.documents.kind import Kind
from specgen.facts.requirement import names_products

KIND = Kind(
    name="hazard-card",
    place=3,
    about="job",
    formats=("pdf", "html"),
    view=hazard_card,
    applies=names_products,
    issued=True,
)
