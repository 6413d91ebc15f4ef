"""What the next revision is called: letters with those left out that are misread, or numbers. Called by approving and issuing.

After the last letter come two: AA, AB (ASME Y14.35, from memory; the letters left out are a policy of the project).
"""

from __future__ import annotations

from collections.abc import Sequence
from string import ascii_uppercase

from specgen.model.project import Numbering, NumberingScheme
from specgen.register.failure import RegisterError


def next_revision(before: Sequence[str], numbering: Numbering | None) -> str:
    """The name of the revision after `before`, the names so far in order. Raises RegisterError where it is taken."""
    policy = numbering or Numbering()
    name = revision_at(len(before), policy)
    if name in before:
        raise RegisterError(
            f"the next revision would be {name}, which is taken; was the numbering of the project changed? "
            "Give back the scheme the document began with"
        )
    return name


def revision_at(index: int, policy: Numbering) -> str:
    """The name of the revision at `index`, counted from 0."""
    if policy.scheme is NumberingScheme.NUMBERS:
        return str(index + 1)
    letters = [letter for letter in ascii_uppercase if letter not in {skip.upper() for skip in policy.skip}]
    if len(letters) < 2:
        raise RegisterError("the numbering of the project leaves out all letters but one; allow some")
    name, rest = "", index + 1
    while rest:
        rest, at = divmod(rest - 1, len(letters))
        name = letters[at] + name
    return name
