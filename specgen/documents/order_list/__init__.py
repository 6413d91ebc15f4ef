"""The order list of a folder: whole packs over all its jobs."""

from specgen.documents.kind import Kind
from specgen.documents.order_list.view import order_list

KIND = Kind(
    name="order-list",
    place=8,
    about="jobs",
    formats=("pdf", "html", "csv"),
    view=order_list,
    sheet=lambda listed: listed.sheet,
    apart=lambda listed: listed.apart,
    applies=lambda spec, _: any(any(spec.products_of(job)) for job in spec.jobs.values()),
)
