"""A comparison in, the bytes of its change notice out. Called by `specgen compare`; writing them to disk is the caller's."""

from __future__ import annotations

from datetime import date

from specgen.comparison.changes import Comparison
from specgen.documents.change_notice.view import Compared
from specgen.documents.registry import KINDS
from specgen.model.spec import Spec
from specgen.printing.files import context_of, files


def print_notice(
    found: Comparison, spec: Spec, *, old_name: str, new_name: str, on: date, number: str = "", for_maker: bool = False
) -> dict[str, bytes]:
    """File name to content, PDF first. `found` holds what the reader may see, all of it
    with `for_maker`; `spec` is the new side. The notice has `number`, that of the project where it is empty.

    Raises RenderError where the notice cannot be laid out.
    """
    compared = Compared(found=found, old_name=old_name, new_name=new_name, number=number, for_maker=for_maker)
    # the two copies of one notice must not be taken for each other, nor written over each other
    suffix = "-maker" if for_maker else ""
    return dict(files(KINDS["change-notice"], compared, context_of(spec, on), suffix=suffix))
