"""A test that is asked as a finding says it: in English, in its author's units. Called by rules and by facts that tell what is offered."""

from __future__ import annotations

from specgen.facts.tests.fit import in_figures, method_name
from specgen.model.test_required import AskedTest


def asked_said(test: AskedTest) -> str:
    """`creep from the scribe to ISO 4628-8 after 480 h of exposure to neutral salt spray: max 1.5 mm`; the words of one in words."""
    name = _named(test)
    return f"{name}: {test.limit}" if test.limit is not None else name


def _named(test: AskedTest) -> str:
    if test.method is None:
        return test.test or "a test"
    said = method_name(test.method) + (f" to {test.standard}" if test.standard is not None else "")
    if test.after is None:
        return said
    lasted = f"{in_figures(test.after.duration)} of " if test.after.duration is not None else ""
    return f"{said} after {lasted}{method_name(test.after.method)}"
