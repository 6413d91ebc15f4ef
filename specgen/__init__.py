"""Job specifications for protective coatings: checked, computed and printed from small YAML sources.

The promised names are `load`, `check`, `compare`, `print_documents`, `approve`, `issue`, `verify` and `Finding`; each is imported when it
is first asked for, so that `import specgen` costs nothing. Each by an example, in a folder that holds two versions of a project:

>>> from datetime import UTC, date, datetime
>>> from pathlib import Path
>>> import specgen
>>> on, now = date(2026, 11, 25), datetime(2026, 11, 25, 9, 0, tzinfo=UTC)

A folder of sources is read, or read and judged by a day:

>>> list(specgen.load(Path("specs")).spec.jobs)
['refit']
>>> checked = specgen.check(Path("specs"), on)
>>> len(checked.report)
0
>>> later = specgen.check(Path("specs_later"), on)
>>> [(finding.id, str(finding.severity)) for finding in later.report if isinstance(finding, specgen.Finding)]
[('FLM007', 'warning')]

What changed between two of them, and the bytes of their documents:

>>> [(change.path, str(change.effect)) for change in specgen.compare(checked, later).changes]
[('systems.cab.layers.primer.passes', 'shifted')]
>>> sorted(specgen.print_documents(checked, documents=["materials-list"], formats=["csv"]))
['MS-001-materials-list.csv']

A document is approved, issued as its next revision, and a copy of it verified:

>>> who = {"role": "approve", "name": "Ada Quill", "meaning": "May be used."}
>>> specgen.approve(Path("specs"), Path("register"), "MS-001", **who, on=on, now=now).path.name
'approve-ada-quill.json'
>>> issued = specgen.issue(Path("specs"), Path("register"), "MS-001", reason="first issue", on=on, now=now)
>>> issued.kept.record.revision
'A'
>>> specgen.verify(Path("register/MS-001/0001/documents/MS-001-method-statement.pdf"), Path("register")).good
True
"""

from __future__ import annotations

from importlib import import_module
from typing import Any

__version__ = "0.1.0"
__all__ = ["Finding", "__version__", "approve", "check", "compare", "issue", "load", "print_documents", "verify"]

_HOMES = {
    "Finding": "specgen.findings",
    "approve": "specgen.issuing.approve",
    "check": "specgen.checking",
    "compare": "specgen.comparing",
    "issue": "specgen.issuing.issue",
    "load": "specgen.model.parse",
    "print_documents": "specgen.printing.documents",
    "verify": "specgen.register.issued_file",
}


def __getattr__(name: str) -> Any:
    if name not in _HOMES:
        raise AttributeError(f"module 'specgen' has no attribute {name!r}")
    return getattr(import_module(_HOMES[name]), name)
