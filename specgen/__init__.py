"""Job specifications for protective coatings: checked, computed and printed from small YAML sources.

The promised names are `load`, `check`, `compare`, `print_documents`, `approve`, `issue`, `verify` and `Finding`; each is imported when it
is first asked for, so that `import specgen` costs nothing.
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
    "compare": "specgen.comparison.compare",
    "issue": "specgen.issuing.issue",
    "load": "specgen.model.parse",
    "print_documents": "specgen.printing.documents",
    "verify": "specgen.register.issued_file",
}


def __getattr__(name: str) -> Any:
    if name not in _HOMES:
        raise AttributeError(f"module 'specgen' has no attribute {name!r}")
    return getattr(import_module(_HOMES[name]), name)
