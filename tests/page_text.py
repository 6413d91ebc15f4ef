"""A page for the screen as it is read: what is kept in one line stands in the middle of its sentence."""

from __future__ import annotations

import re

_KEPT_WHOLE = re.compile(r'<span class="one-line">([^<]*)</span>')


def running_text(page: str) -> str:
    """The page without the marks about what is not to be broken."""
    return _KEPT_WHOLE.sub(r"\1", page)
