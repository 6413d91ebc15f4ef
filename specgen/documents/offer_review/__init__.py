"""The offer review: what was required, what is offered, and clause by clause whether it complies; goes back to the tender.

It is not issued: it instructs nobody, answers one offer on one day, and is drawn up anew for the next. What is issued is the
specification it judges by.
"""

from specgen.documents.kind import Kind
from specgen.documents.offer_review.view import offer_review

KIND = Kind(name="offer-review", place=9, about="offer", formats=("pdf", "html"), view=offer_review, record=True)
