"""What a rule is: a generator of problems over one kind of record, with its weight, its ground and its page.

A rule module holds one such generator and opens with its page (see `page`). Called by every rule and by `run`.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from datetime import date
from functools import cache
from importlib import import_module
from pkgutil import iter_modules
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
    """The rules of one folder: their ids begin with `prefix`, and what they find concerns `concern` where a rule names no other.

    `sentences`: what takes them time is to read what is said in words.
    """

    prefix: str
    concern: Concern
    sentences: bool


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


def family(folder: str, prefix: str, concern: Concern, *, sentences: bool = False) -> None:
    """Declare a folder, by its dotted name, a family of rules. Raises TypeError where another folder has the prefix."""
    if any(known.prefix == prefix for known in _families.values()):
        raise TypeError(f"{prefix} is the prefix of two families")
    _families[folder] = Family(prefix, concern, sentences)


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


def families(*, sentences: bool) -> tuple[str, ...]:
    """The dotted names of the folders of rules, of those that read sentences or of the others: a rule lives in that of its family,
    as specgen.rules.film.limits_in_order."""
    package = import_module("specgen.rules")
    folders = [module.name for module in iter_modules(package.__path__, "specgen.rules.") if module.ispkg]
    for folder in folders:
        import_module(folder)
    return tuple(folder for folder in folders if _families[folder].sentences is sentences)


def _all_families() -> tuple[str, ...]:
    return families(sentences=True) + families(sentences=False)


@cache
def rules_of(folder: str) -> tuple[Rule, ...]:
    """The rules of one family, in the order of their ids. The modules of the others are not read."""
    for module in iter_modules(import_module(folder).__path__, f"{folder}."):
        import_module(module.name)
    return tuple(_rules[key] for key in sorted(_rules) if key.startswith(_families[folder].prefix))


@cache
def all_rules() -> tuple[Rule, ...]:
    """Every rule, in the order of their ids."""
    return tuple(sorted((one for folder in _all_families() for one in rules_of(folder)), key=lambda one: one.id))


def rule_named(rule_id: str) -> Rule | None:
    """The rule of this id, for which its family alone is read. None where no rule has it."""
    for folder in _all_families():
        if rule_id.startswith(_families[folder].prefix):
            rules_of(folder)
    return _rules.get(rule_id)
