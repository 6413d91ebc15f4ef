"""The as-built record: released or not and what is open, then what was done by whom, when, in which air, with which batches."""

from specgen.documents.as_built_record.view import as_built_record
from specgen.documents.kind import Kind

KIND = Kind(
    name="as-built-record",
    place=16,
    about="records",
    formats=("pdf", "html"),
    view=as_built_record,
    issued=True,
    record=True,
)
