"""What goes wrong while a document is printed: raised by every module of this floor, reported by the commands.

A refusal to print is not a finding: it has no place in a source file, only a reason and a remedy in its message.
"""

from __future__ import annotations


class RenderError(Exception):
    """A document cannot be printed; the message says what, why and what to do, in plain words."""


class TooMuchError(RenderError):
    """A document is larger than can be laid out in reasonable time; one that can be divided is printed in parts."""


class ProseError(RenderError):
    """A text of the author's cannot be turned into print: too long, too deeply nested, or a run of one sign."""
