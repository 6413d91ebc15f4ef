"""Everything a rule module needs, in one import: how a rule is declared, the records it judges, weights, citations, tables.

A rule module is its page and its logic. What several rules ask is answered in `specgen.facts`, never here.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from specgen.findings import Severity
from specgen.model.declaring import Concern
from specgen.model.job import Job
from specgen.model.node import Node
from specgen.model.preparation import Preparation
from specgen.model.product import Product, Role
from specgen.model.project import Project
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.model.walk import Path
from specgen.rules.between_units import unless_range_rounded, unless_rounded, unless_sum_rounded
from specgen.rules.declare import Problem, family, rule
from specgen.standards.citations import LOGIC, MEMORY, PRACTICE, Basis, Citation, cite
from specgen.standards.tables import Row, cell_citation, table
from specgen.units.display import show
from specgen.units.quantity import Quantity, Range

__all__ = [
    "ERROR",
    "LOGIC",
    "MEMORY",
    "NOTE",
    "PRACTICE",
    "WARNING",
    "Basis",
    "Citation",
    "Concern",
    "Job",
    "Layer",
    "Node",
    "Path",
    "Preparation",
    "Problem",
    "Problems",
    "Product",
    "Project",
    "Quantity",
    "Range",
    "Role",
    "Row",
    "Severity",
    "Spec",
    "System",
    "cell_citation",
    "cite",
    "date",
    "family",
    "rule",
    "show",
    "table",
    "unless_range_rounded",
    "unless_rounded",
    "unless_sum_rounded",
]

ERROR, WARNING, NOTE = Severity.ERROR, Severity.WARNING, Severity.NOTE

Problems = Iterator[Problem]
