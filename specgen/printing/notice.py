"""A comparison in, the bytes of its change notice out. Called by `specgen compare`; writing them to disk is the caller's."""

from __future__ import annotations

from datetime import date

from specgen import __version__
from specgen.comparison.changes import Comparison
from specgen.documents.change_notice.view import change_notice
from specgen.model.file_names import file_stem
from specgen.model.spec import Spec
from specgen.rendering.environment import fill, translation
from specgen.rendering.html import write_html
from specgen.rendering.pdf import write_pdf

_TEMPLATE = "change_notice/document.html.j2"


def print_notice(
    found: Comparison, spec: Spec, *, old_name: str, new_name: str, on: date, number: str = "", for_maker: bool = False
) -> dict[str, bytes]:
    """File name to content, PDF first. `found` holds what the reader may see, all of it
    with `for_maker`; `spec` is the new side. The notice has `number`, that of the project where it is empty.

    Raises RenderError where the notice cannot be laid out.
    """
    project = spec.project
    view = change_notice(
        found,
        spec,
        old_name=old_name,
        new_name=new_name,
        number=number,
        on=on,
        program=f"specgen {__version__}",
        translate=translation(project.language),
        for_maker=for_maker,
    )
    # the two copies of one notice must not be taken for each other, nor written over each other
    stem = f"{file_stem(view.number)}-change-notice{'-maker' if for_maker else ''}"
    page = fill(_TEMPLATE, language=project.language, medium="print", view=view, draft=True)
    screen = fill(_TEMPLATE, language=project.language, medium="screen", view=view, draft=True)
    pdf = write_pdf(page, page_size=project.page_size.value, author=project.maker.name, subject=view.answer)
    return {f"{stem}.pdf": pdf, f"{stem}.html": write_html(screen)}
