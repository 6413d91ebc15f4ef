"""DOC001 looks at every field that a template prints as Markdown: each text of the model is marked, and all is printed."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import get_args

from specgen.findings import Report
from specgen.model.field_types import Text
from specgen.model.node import Node
from specgen.model.walk import inner_record, records
from specgen.printing.documents import print_documents
from specgen.rules.document.prose_within_bounds import PROSE
from tests.good_spec import checked, good, put


def _is_text(model: type[Node], name: str) -> bool:
    field = model.model_fields[name]
    return get_args(Text)[1] in (*field.metadata, *(m for arg in get_args(field.annotation) for m in get_args(arg)))


def test_every_field_printed_as_markdown_is_looked_at() -> None:
    spec = good()
    put(spec, "products.barrier.application.activation", "{action: x}")
    put(spec, "products.barrier.application.mixing.induction", "10 min")
    whole = checked(spec).loaded.spec
    assert whole is not None
    marked = []
    for kind in ("products", "preparations", "systems", "jobs"):
        for key, record in getattr(whole, kind).items():
            for path, node in records(record, (kind, key)):
                for name in type(node).model_fields:
                    if inner_record(type(node), name) is None and _is_text(type(node), name):
                        marked.append(f"{type(node).__name__}.{name}")
                        put(spec, ".".join((*path, name)), f"x **{marked[-1]}** y")
    assert len(set(marked)) > 20
    # a text in every field makes errors of another kind, which do not matter to what is printed
    result = replace(checked(spec), report=Report())
    pages = print_documents(result, formats=["html"])
    found = {name for page in pages.values() for name in re.findall(r"<strong>(\w+\.\w+)</strong>", page.decode())}
    assert found == {f"{model.__name__}.{name}" for model, names in PROSE.items() for name in names}
