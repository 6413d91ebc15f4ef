"""Where the templates, styles and fonts lie, and which fonts the documents are set in.

Called by `environment` (templates, inlined styles) and by `pdf` (everything the typesetter asks for by name).
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

from specgen.rendering.failure import RenderError

FONT_FAMILY = "Specgen Sans"
"""The name the print style knows the shipped faces by, so that a like-named font of the machine is never taken."""


@cache
def templates_folder() -> Path:
    """The real path of the templates folder: inside an installed package, or beside the package in a checkout.

    Raises RenderError when neither is there.
    """
    package = Path(__file__).resolve().parent.parent
    # The installed place is asked first: a stray `templates` beside installed packages belongs to somebody else.
    for folder in (package / "_templates", package.parent / "templates"):
        if (folder / "base.html.j2").is_file():
            return folder.resolve()
    raise RenderError(
        f"The templates are missing: neither {package / '_templates'} nor {package.parent / 'templates'} holds "
        "base.html.j2. The installation is incomplete; install the package again."
    )


def asset(name: str) -> Path:
    """The real path of one file below the templates folder, `name` being relative with forward slashes.

    Raises RenderError for a name that leads outside the folder (also by a symbolic link) or to no file.
    """
    folder = templates_folder()
    refused = RenderError(f"The asset {name!r} lies outside the templates folder. Only shipped files may be used.")
    if not name or "\0" in name or "\\" in name or name.startswith("/") or ".." in name.split("/"):
        raise refused
    path = (folder / name).resolve()
    if not path.is_relative_to(folder):
        raise refused
    if not path.is_file():
        raise RenderError(f"The asset {name!r} is not among the shipped templates. Check how its name is spelt.")
    return path
