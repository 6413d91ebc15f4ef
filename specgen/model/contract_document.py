"""A specification of the customer that jobs are made to: its title block, what it replaces, and its clauses with their limits.

The wording of a clause is the customer's; `text` is our summary of it. Where a clause can be held by figures, `limit` states them.
What traces a clause to our sources is `facts.contract`.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from specgen.model.acceptance import AcceptanceRule, Stage
from specgen.model.banned import Banned
from specgen.model.declaring import PATH, Concern, Polarity, entries, leaf, part
from specgen.model.field_types import (
    Code,
    CountRange,
    Id,
    IsoDate,
    Line,
    Span,
    SurfaceDensity,
    Text,
    ThicknessRange,
    WholeNumber,
    YesNo,
    choice,
    listed,
)
from specgen.model.film import FilmLimits
from specgen.model.node import Node
from specgen.model.preparation import Grade
from specgen.model.product import ApplicationClimate, Role
from specgen.model.requirement import Requirement
from specgen.model.system import Corrosivity, Durability


class Force(StrEnum):
    """What a clause does, in the order of what it asks for."""

    PERMITTED = "permitted"
    ADVISED = "advised"
    REQUIRED = "required"


class Superseded(Node):
    """A document or an edition that this one replaces."""

    id: Id = leaf(Polarity.SCOPE, Concern.DOCUMENT, "id of the entry", required=True)
    number: Code = leaf(Polarity.FACT, Concern.DOCUMENT, "number of the document superseded", required=True)
    edition: Code | None = leaf(Polarity.FACT, Concern.DOCUMENT, "edition superseded; every earlier one if left out")


class MovedTo(Node):
    """Where a clause stands now."""

    number: Code = leaf(Polarity.FACT, Concern.DOCUMENT, "number of the document that holds it now", required=True)
    edition: Code | None = leaf(Polarity.FACT, Concern.DOCUMENT, "edition of that document")
    clause: Code = leaf(Polarity.FACT, Concern.DOCUMENT, "number of the clause there", required=True)


class ClauseLimit(Node):
    """What a clause asks for in figures and terms that a job can be held against. What is left out is not asked for."""

    materials: tuple[Annotated[str, listed("materials")], ...] = leaf(
        Polarity.SCOPE,
        Concern.DOCUMENT,
        "materials of the parts it applies to, ids of the table materials; all if left out",
        default=(),
    )
    coat: Annotated[Role, choice(Role)] | None = leaf(
        Polarity.SCOPE, Concern.FILM, "coat type that film, coats and product apply to"
    )
    film: FilmLimits | None = part("DFT of that coat, of each coat where no coat type is stated")
    total: FilmLimits | None = part("total DFT of the system")
    coats: CountRange | None = leaf(
        Polarity.WITHIN, Concern.FILM, "number of coats of that coat type, of the system where none is stated"
    )
    product: Requirement | None = part("what the product of that coat must be and show")
    banned: tuple[Banned, ...] = entries("substances banned in the products")
    grade: Grade | None = leaf(Polarity.LADDER, Concern.PREPARATION, "preparation grade required, as in Sa 2 1/2")
    profile: ThicknessRange | None = leaf(Polarity.WITHIN, Concern.PREPARATION, "surface profile, as in 25..40 um")
    salt_limit: SurfaceDensity | None = leaf(
        Polarity.AT_MOST, Concern.ACCEPTANCE, "maximum soluble salts, as sodium chloride, as in 50 mg/m2"
    )
    dust_quantity: WholeNumber | None = leaf(
        Polarity.AT_MOST, Concern.ACCEPTANCE, "maximum dust quantity rating to ISO 8502-3: 0 to 5"
    )
    dust_size: WholeNumber | None = leaf(
        Polarity.AT_MOST, Concern.ACCEPTANCE, "maximum dust size class to ISO 8502-3: 0 to 5"
    )
    climate: ApplicationClimate | None = part("ambient conditions allowed during the work")
    acceptance: Annotated[AcceptanceRule, choice(AcceptanceRule)] | None = leaf(
        Polarity.REPLACED, Concern.ACCEPTANCE, "acceptance rule for DFT readings"
    )
    hold_points: tuple[Annotated[Stage, choice(Stage)], ...] = leaf(
        Polarity.ALL_OF, Concern.ACCEPTANCE, "stages of the work at which a hold point is required", default=()
    )
    corrosivity: Annotated[Corrosivity, choice(Corrosivity)] | None = leaf(
        Polarity.LADDER, Concern.FILM, "corrosivity category to ISO 12944-2 that the system serves: C1 to CX"
    )
    durability: Annotated[Durability, choice(Durability)] | None = leaf(
        Polarity.LADDER, Concern.FILM, "durability of the system: low, medium, high or very-high"
    )
    warranty: Span | None = leaf(Polarity.AT_LEAST, Concern.ACCEPTANCE, "warranty period, as in 5 years")


class ContractClause(Node):
    """One clause of the customer's document."""

    id: Id = leaf(Polarity.SCOPE, Concern.DOCUMENT, "id of the clause", required=True)
    number: Code = leaf(Polarity.WORDING, Concern.DOCUMENT, "number of the clause, as in 4.2.1", required=True)
    text: Text = leaf(Polarity.REQUIREMENT_TEXT, Concern.DOCUMENT, "summary of the clause in our words", required=True)
    force: Annotated[Force, choice(Force)] = leaf(
        Polarity.LADDER, Concern.ACCEPTANCE, "force of the clause: required, advised or permitted", required=True
    )
    moved_to: MovedTo | None = part("place where the clause stands now")
    limit: ClauseLimit | None = part("what the clause asks for, as far as figures and terms can hold it")


class ContractDocument(Node):
    """A document of the customer's that jobs are made to."""

    id: Id = leaf(Polarity.SCOPE, Concern.DOCUMENT, "id of the document", required=True)
    number: Code = leaf(Polarity.WORDING, Concern.DOCUMENT, "number of the customer's document", required=True)
    title: Line = leaf(Polarity.WORDING, Concern.DOCUMENT, "title of the document", required=True)
    edition: Code | None = leaf(Polarity.REPLACED, Concern.DOCUMENT, "edition or issue of the document, as in 3")
    date: IsoDate | None = leaf(Polarity.FACT, Concern.DOCUMENT, "date of that edition")
    issued_by: Line | None = leaf(
        Polarity.WORDING, Concern.DOCUMENT, "issuer of the document, where it is not the customer"
    )
    supersedes: tuple[Superseded, ...] = entries("documents and editions that this one replaces")
    clauses: tuple[ContractClause, ...] = entries("clauses", required=True, least=1, passes_on=True)


class ClauseAnswer(Node):
    """Where the author says that a clause is met, or why it does not apply."""

    id: Id = leaf(
        Polarity.SCOPE,
        Concern.DOCUMENT,
        "id of the clause answered, or of the entry where clause names it",
        required=True,
    )
    clause: Code | None = leaf(
        Polarity.FACT, Concern.DOCUMENT, "clause answered, by its id or number, where the id is another"
    )
    applies: YesNo = leaf(
        Polarity.AT_LEAST,
        Concern.ACCEPTANCE,
        "application of the clause to this job; no with the reason in text",
        default=True,
    )
    at: Line | None = leaf(
        Polarity.FACT,
        Concern.DOCUMENT,
        "place that meets it (its address, as a finding prints it)",
        refers=PATH,
    )
    text: Text | None = leaf(Polarity.FACT, Concern.DOCUMENT, "answer to the clause in words")


class Deviation(Node):
    """A departure from a clause that the customer has agreed to."""

    id: Id = leaf(
        Polarity.SCOPE,
        Concern.DOCUMENT,
        "id of the clause departed from, or of the entry where clause names it",
        required=True,
    )
    clause: Code | None = leaf(
        Polarity.FACT, Concern.DOCUMENT, "clause departed from, by its id or number, where the id is another"
    )
    text: Text = leaf(
        Polarity.REQUIREMENT_TEXT, Concern.ACCEPTANCE, "departure from the clause, in words", required=True
    )
    agreed_by: Line = leaf(
        Polarity.WAIVER,
        Concern.DOCUMENT,
        "agreement of the customer: person, and letter or date",
        required=True,
    )


class MadeTo(Node):
    """A document of the customer's that a job is made to."""

    id: Id = leaf(Polarity.SCOPE, Concern.DOCUMENT, "id of the entry", required=True)
    document: Id = leaf(
        Polarity.REPLACED,
        Concern.DOCUMENT,
        "document of the customer's (by its id)",
        required=True,
        refers="contract_documents",
    )
    items: tuple[Id, ...] = leaf(
        Polarity.SCOPE,
        Concern.DOCUMENT,
        "items made to it (by their ids); all items of the job if left out",
        default=(),
    )
    warranty: Span | None = leaf(
        Polarity.AT_LEAST, Concern.ACCEPTANCE, "warranty period given to the customer, as in 5 years"
    )
    answers: tuple[ClauseAnswer, ...] = entries("answers to clauses that no figures hold, or that do not apply")
    deviations: tuple[Deviation, ...] = entries("departures that the customer has agreed to", passes_on=False)
