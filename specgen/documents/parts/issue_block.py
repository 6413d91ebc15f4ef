"""What an issued document says of itself on its pages: revision, day, who approved it, and the fingerprint of its certificate.

Called by `specgen.issuing.issue`; `base.html.j2` and `parts/masthead.html.j2` print it. A draft has none.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

from specgen.figures.square_code import square_code
from specgen.units.locale import Locale


class Given(Protocol):
    """An approval as the register holds it; `time` is UTC, `2026-11-25T16:02:03Z`."""

    @property
    def role(self) -> str: ...
    @property
    def name(self) -> str: ...
    @property
    def meaning(self) -> str: ...
    @property
    def time(self) -> str: ...


@dataclass(frozen=True, slots=True, kw_only=True)
class IssueView:
    """`approvals` are (what was done, by whom and on what terms), `who` role and name of each; `code` is a drawing."""

    revision: str
    issued: str
    reason: str
    approvals: tuple[tuple[str, str], ...]
    who: tuple[tuple[str, str], ...] = ()
    fingerprint: str
    code: str


def issue_block(
    revision: str,
    issued: str,
    reason: str,
    approvals: Sequence[tuple[Given, str]],
    fingerprint: str,
    code: str,
    translate: Locale,
) -> IssueView:
    """`issued` is the day; each approval comes with the principal who signed it, empty where nobody did."""
    titled = translate("QR code: number, revision, date and certificate of this document")
    return IssueView(
        revision=revision,
        issued=issued,
        reason=reason,
        approvals=tuple(_approval(given, signer, translate) for given, signer in approvals),
        who=tuple((given.role, given.name) for given, _ in approvals),
        fingerprint=fingerprint,
        code=square_code(code, titled),
    )


def _approval(given: Given, signer: str, translate: Locale) -> tuple[str, str]:
    done = translate("Checked by") if given.role == "check" else translate("Approved by")
    signed = (
        translate("signed with {signer}'s key").format(signer=signer) if signer else translate("recorded, not signed")
    )
    when = given.time.replace("T", " ").replace("Z", " UTC")
    return done, f"{given.name}, {when}: {given.meaning} ({signed})"
