"""The last touches to a PDF that is a form. Called by `pdf` with the document tree the typesetter has built (a `pydyf.PDF`)."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pydyf  # type: ignore[import-untyped]  # ships no types


def finish_form(tree: Any, fields: Mapping[str, str]) -> None:
    """Adds fields without a place on a page, for whoever reads the form, and takes out the request to draw every field anew.

    A viewer that heeds the request changes the file by opening it, and asks whether to save what nobody filled.
    """
    form = tree.catalog["AcroForm"]
    form.pop("NeedAppearances", None)
    for name, text in fields.items():
        field = pydyf.Dictionary({"FT": "/Tx", "T": pydyf.String(name), "V": pydyf.String(text), "Ff": 1})
        tree.add_object(field)
        form["Fields"].append(field.reference)
