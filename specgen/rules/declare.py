"""What a rule is: a generator of problems over one kind of record, with its weight, its ground and its page.

A rule module holds one such generator and opens with its page (see `page`). Called by every rule and by `run`.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from datetime import date
from functools import cache
from importlib import import_module
from pkgutil import walk_packages
from typing import Any, NamedTuple, TypeVar

from specgen.findings import Severity
from specgen.model.declaring import Concern
from specgen.model.node import Node
from specgen.model.spec import Spec
from specgen.model.walk import Path
from specgen.rules.page import Page, id_of_page, read_page
from specgen.standards.citations import Citation


class Problem(NamedTuple):
    """What a rule found. `path` is relative to the record it was given, or, where `absolute`, from the top of the sources;
    `remedy` goes before the one on the page.

    `severity` may be milder than the rule's own, where a part of the rule stands on weaker ground or data are missing.
    """

    path: Path
    what: str
    remedy: str = ""
    severity: Severity | None = None
    source: Citation | None = None
    absolute: bool = False


Check = Callable[[Any, Spec, date], Iterator[Problem]]
"""From a record, the specification it stands in, and the day it is judged by, to what is wrong with it."""


class Family(NamedTuple):
    """The rules of one folder: their ids begin with `prefix`, and what they find concerns `concern` where a rule names no other."""

    prefix: str
    concern: Concern


class Rule(NamedTuple):
    """One rule of the catalogue."""

    id: str
    on: type[Node]
    severity: Severity
    concern: Concern
    source: Citation
    waivable: bool
    check: Check
    docstring: str

    @property
    def page(self) -> Page:
        """Read when it is asked for, which most rules never are."""
        return read_page(self.docstring)


_families: dict[str, Family] = {}
_rules: dict[str, Rule] = {}
Subject = TypeVar("Subject", bound=Node)


def family(folder: str, prefix: str, concern: Concern) -> None:
    """Declare a folder, by its dotted name, a family of rules. Raises TypeError where another folder has the prefix."""
    if any(known.prefix == prefix for known in _families.values()):
        raise TypeError(f"{prefix} is the prefix of two families")
    _families[folder] = Family(prefix, concern)


def rule(
    rule_id: str,
    *,
    on: type[Subject],
    severity: Severity,
    source: Citation,
    concern: Concern | None = None,
    waivable: bool = True,
) -> Callable[[Callable[[Subject, Spec, date], Iterator[Problem]]], Callable[[Subject, Spec, date], Iterator[Problem]]]:
    """Enter a generator in the catalogue; the docstring of its module is its page.

    Raises TypeError where an error would rest on unconfirmed ground, an id is used twice or has the prefix of another family,
    or its folder declares none.
    """
    if severity is Severity.ERROR and not source.basis.confirmed:
        raise TypeError(f"{rule_id}: an error cannot rest on a source that is {source.basis}")

    def enter(
        check: Callable[[Subject, Spec, date], Iterator[Problem]],
    ) -> Callable[[Subject, Spec, date], Iterator[Problem]]:
        if rule_id in _rules:
            raise TypeError(f"{rule_id} is used by two rules")
        docstring = sys.modules[check.__module__].__doc__ or ""
        headed = id_of_page(docstring)
        if headed != rule_id:
            raise TypeError(f"{rule_id}: its page is headed {headed}")
        folder = check.__module__.rpartition(".")[0]
        if folder not in _families:
            raise TypeError(f"{rule_id}: the __init__.py of {folder} declares no family")
        of = _families[folder]
        if not rule_id.startswith(of.prefix):
            raise TypeError(f"{rule_id}: the rules of its folder begin with {of.prefix}")
        _rules[rule_id] = Rule(rule_id, on, severity, concern or of.concern, source, waivable, check, docstring)
        return check

    return enter


@cache
def all_rules() -> tuple[Rule, ...]:
    """Every rule, in the order of their ids."""
    package = import_module("specgen.rules")
    for module in walk_packages(package.__path__, "specgen.rules."):
        # A rule lives in a folder of its family: specgen.rules.film.limits_in_order
        if module.name.count(".") == 3:
            import_module(module.name)
    return tuple(_rules[key] for key in sorted(_rules))
