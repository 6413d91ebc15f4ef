"""Print the documents of a checked folder as bytes. Called by `render`; writing them to disk is the caller's.

Nothing is printed from a folder with errors: a document is right or it is not there. The kinds: `specgen.documents.registry`.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

from specgen.checking import Checked
from specgen.documents.context import Context
from specgen.documents.kind import About, Kind
from specgen.documents.registry import KINDS
from specgen.facts.closure import cut_to_closure
from specgen.facts.tests.fit import reports_of
from specgen.facts.tests.qualification import Bid, bids
from specgen.findings import Severity
from specgen.model.file_names import sheet_number
from specgen.model.job import Job
from specgen.model.offer import Offer
from specgen.model.parse import Loaded
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.model.test_report import LabReport
from specgen.printing.files import Issue, context_of, files
from specgen.register.revisions import Revisions, revisions_of, sheet_revisions
from specgen.rendering.pdf import typesetter
from specgen.side_by_side import side_by_side
from specgen.units.locale import counted

if TYPE_CHECKING:
    from specgen.assessing.as_built import Built

_OF_A_FOLDER = {name: kind for name, kind in KINDS.items() if kind.about not in {"comparison", "assessment", "records"}}
DOCUMENTS = tuple(_OF_A_FOLDER)
FORMATS = tuple(dict.fromkeys(format for kind in _OF_A_FOLDER.values() for format in kind.formats))

Entry = TypeVar("Entry")
_Subjects = list[Job] | list[Product] | list[Spec] | list[Offer] | list[Bid] | list[LabReport]

# What a folder has to hold for a document about each of these.
_HELD: Mapping[About, str] = {
    "job": "job",
    "product": "product",
    "folder": "product",
    "jobs": "job",
    "offer": "offer",
    "bid": "job",
    "report": "test report",
}


class Refused(Exception):  # noqa: N818  # reads as what happened: the printing was refused
    """The folder cannot be printed; the text says why."""


def print_documents(
    checked: Checked,
    *,
    documents: Iterable[str] | None = None,
    formats: Iterable[str] | None = None,
    jobs: Iterable[str] | None = None,
    products: Iterable[str] | None = None,
    offers: Iterable[str] | None = None,
    told: Callable[[str], None] | None = None,
    register: Path | None = None,
) -> dict[str, bytes]:
    """File name to content, for every document and format asked for; a kind is left out of formats it has not.

    None means all; where `jobs` are named and `products` are not, the products are those the jobs use, and where `offers` alone are
    named, nothing but their reviews is printed. `told` is called
    with each file name as it is finished; `register` is asked for earlier revisions. Raises Refused where the folder has errors, a
    name is not known, or nothing is left to print; RenderError where a document cannot be laid out. No two files have one name:
    see the rule DOC003.
    """
    spec = checked.loaded.spec
    errors = checked.report.count(Severity.ERROR)
    if errors or spec is None:
        raise Refused(f"the folder has {errors} {counted('error', 'errors', errors)}, so nothing is printed")
    kinds = _known("document", documents, _OF_A_FOLDER)
    if offers is not None and documents is None and jobs is None and products is None:
        kinds = {name: kind for name, kind in kinds.items() if kind.about == "offer"}
    wanted = _known("format", formats, {format: format for format in FORMATS})
    subjects = _subjects(spec, checked.loaded, jobs, products, offers)
    context = context_of(
        spec,
        checked.on,
        findings=tuple(checked.report),
        revisions=_revisions(spec, register, checked.loaded) if register is not None else {},
    )
    applying = {kind.name: [one for one in subjects[kind.about] if kind.applies(one, spec)] for kind in kinds.values()}
    works = [
        partial(_printed, kind, subject, context, wanted) for kind in kinds.values() for subject in applying[kind.name]
    ]
    printed: dict[str, bytes] = {}
    # a page for the screen is written in less time than a process is copied
    made = side_by_side(works, typesetter) if "pdf" in wanted else (work() for work in works)
    for contents in made:
        printed.update(contents)
        if told is not None:
            for file in contents:
                told(file)
    if not printed:
        raise Refused(_nothing(kinds, wanted, subjects, applying))
    return printed


def print_issue(
    checked: Checked, spec: Spec, subject: Job | Product | Built, issue: Issue, earlier: Mapping[str, Revisions]
) -> dict[str, bytes]:
    """File name to content of every document issued under the number of a job or product, or of what was built in a job; `spec` is
    what it reaches.

    `earlier` are the revisions of that number before this one, and those of the documents it rests on, by number. Raises RenderError
    where a document cannot be laid out. That the sources are fit to be issued is judged by the caller.
    """
    about: About = "job" if isinstance(subject, Job) else "product" if isinstance(subject, Product) else "records"
    context = context_of(
        spec,
        checked.on,
        findings=tuple(checked.report),
        issue=issue,
        revisions=earlier,
    )
    issued = [kind for kind in KINDS.values() if kind.issued and kind.about == about and kind.applies(subject, spec)]
    return {name: content for kind in issued for name, content in files(kind, subject, context, issue=issue)}


def _printed(kind: Kind[Any, Any], subject: Any, context: Context, formats: Collection[str]) -> dict[str, bytes]:
    return dict(files(kind, subject, context, formats=formats))


def _revisions(spec: Spec, register: Path, loaded: Loaded) -> dict[str, Revisions]:
    numbered: dict[str, Job | Product] = {job.document.number: job for job in spec.jobs.values()}
    taken = [one for one in spec.products.values() if loaded.of_range("products", one.id)]
    numbered |= {sheet_number(one): one for one in spec.products.values() if one not in taken}
    own = {
        number: revisions_of(register, number, partial(cut_to_closure, spec, subject))
        for number, subject in numbered.items()
    }
    # what a sheet of the range says besides stands in the range, and the product alone here
    return own | {sheet_number(one): sheet_revisions(register, loaded, spec, one) for one in taken}


def _known(what: str, names: Iterable[str] | None, there: Mapping[str, Entry]) -> dict[str, Entry]:
    """The entries named, each once, in the order named; all where nothing is named."""
    if names is None:
        return dict(there)
    named = list(names)
    for name in named:
        if name not in there:
            raise Refused(f"there is no {what} {name}; there is: {', '.join(there) or 'none'}")
    return {name: there[name] for name in named}


def _subjects(
    spec: Spec,
    loaded: Loaded,
    jobs: Iterable[str] | None,
    products: Iterable[str] | None,
    offers: Iterable[str] | None,
) -> Mapping[About, _Subjects]:
    """What there are documents about; a product of a shared range has its documents there."""
    own = {key: product for key, product in spec.products.items() if not loaded.of_range("products", key)}
    for key in products or ():
        if key not in own and key in spec.products and loaded.range is not None:
            raise Refused(f"the product {key} stands in the range {loaded.range.named}; print it there")
    chosen = _known("job", jobs, spec.jobs)
    if products is not None or jobs is None:
        described = _known("product", products, own)
    else:
        described = {
            product.id: product for job in chosen.values() for product in spec.products_of(job) if product.id in own
        }
    answering = (
        list(_known("offer", offers, spec.offers).values())
        if offers is not None
        else [offer for offer in spec.offers.values() if jobs is None or offer.job in chosen]
    )
    return {
        "job": list(chosen.values()),
        "product": list(described.values()),
        "folder": [spec] if own else [],
        "jobs": [spec] if spec.jobs else [],
        "offer": answering,
        "bid": [
            bid
            for job in chosen.values()
            for bid in bids(job, spec)
            if offers is None or bid.offer is None or bid.offer in answering
        ],
        "report": _reports(spec, loaded, None if products is None and jobs is None else described),
    }


def _reports(spec: Spec, loaded: Loaded, described: Mapping[str, Product] | None) -> list[LabReport]:
    """The reports of the folder itself, of all products or of those described."""
    own = [report for key, report in spec.reports.items() if not loaded.of_range("reports", key)]
    if described is None:
        return own
    shown = {report.id for product in described.values() for report in reports_of(product, spec)}
    return [report for report in own if report.id in shown]


def _nothing(
    kinds: Iterable[str],
    formats: Iterable[str],
    subjects: Mapping[About, _Subjects],
    applying: Mapping[str, list[Any]],
) -> str:
    about = dict.fromkeys(KINDS[name].about for name in kinds)
    if missing := dict.fromkeys(_HELD[one] for one in about if not subjects[one]):
        return f"the folder holds no {' and no '.join(missing)}"
    if not any(applying.values()):
        return f"{', '.join(kinds)}: none is printed before the products are chosen"
    return f"{', '.join(kinds)} does not come in the format {', '.join(formats)}"
