"""`specgen explain`: the page behind the id of a finding, a published table, the working of a figure, or where a value is stated."""

from __future__ import annotations

import argparse
from collections.abc import Iterable, Mapping
from difflib import get_close_matches
from pathlib import Path

from specgen.clock import today
from specgen.commands.audience import declare_audience
from specgen.commands.outcome import CannotRunError, Outcome
from specgen.facts.job.quantities import quantities
from specgen.facts.product.emissions import voc_let_off
from specgen.facts.product.figures import product_figures
from specgen.model.job import Job
from specgen.model.node import Node
from specgen.model.parse import load
from specgen.model.product import Product
from specgen.model.shared_range import OWN_KINDS
from specgen.model.spec import KINDS, Spec
from specgen.report.explanations import explanations
from specgen.report.printed_table import printed_table
from specgen.report.printed_working import printed_working
from specgen.report.stated_where import stated_where
from specgen.source.characters import printable, printable_name
from specgen.source.project import find_project
from specgen.standards.tables import table, table_names
from specgen.trade.working import Working

ABOUT = (
    "Print the page of a rule or fault: what it checks, why, examples, what to do, and the source it rests on; "
    "a published table; how a figure of a job or product was calculated; or where each value of a record is stated."
)

_ASKED = (
    "id of a finding, as in FLM002; table:NAME; working:ID; or an address, as in systems, which lists them, systems.cab or "
    "systems.cab.layers.top"
)
_TABLE = "table:"
_WORKING = "working:"


def declare(parser: argparse.ArgumentParser) -> None:
    wanted = parser.add_mutually_exclusive_group()
    wanted.add_argument("id", metavar="ID", nargs="?", help=_ASKED)
    wanted.add_argument("--list", action="store_true", help="print id, severity and title of every rule and fault")
    wanted.add_argument("--html", metavar="DIR", help="write every page and table into DIR as linked HTML pages")
    whose = parser.add_mutually_exclusive_group()
    whose.add_argument(
        "--job", metavar="ID", help="job whose figure working:ID is; without an ID its figures are listed"
    )
    whose.add_argument("--product", metavar="ID", help="product whose figure working:ID is, likewise")
    parser.add_argument("--path", metavar="PATH", default=".", help="folder of the sources (this folder if left out)")
    declare_audience(
        parser, "withhold the manufacturer's confidential inputs (customer, the default) or show them (maker)"
    )


def run(arguments: argparse.Namespace) -> Outcome:
    if not (arguments.list or arguments.html or arguments.id or arguments.job or arguments.product):
        raise CannotRunError(
            "name what to explain: the id of a finding, table:NAME, --job ID or --product ID; --list lists the ids"
        )
    if arguments.list:
        pages = explanations().values()
        return Outcome("".join(f"{page.id}  {page.severity.value:<7}  {page.title}\n" for page in pages))
    if arguments.html:
        return _pages(Path(arguments.html))
    # a job without an id asks for its figures
    asked = _WORKING if arguments.id is None else str(arguments.id)
    if asked.lower().startswith(_TABLE):
        return Outcome(_table(asked[len(_TABLE) :]))
    if asked.lower().startswith(_WORKING):
        return Outcome(_working(asked[len(_WORKING) :], arguments))
    if asked.partition(".")[0] in KINDS:
        return Outcome(_stated(asked, arguments))
    page = explanations().get(asked.upper())
    if page is None and asked in table_names():
        return Outcome(_table(asked))
    if page is None:
        raise CannotRunError(f"there is no page for {asked!r}; {_nearest(asked.upper(), explanations())}")
    return Outcome(page.text())


def _pages(folder: Path) -> Outcome:
    # Only this way of asking needs the template engine.
    from specgen.commands.targets import write_files
    from specgen.printing.catalogue import catalogue_pages

    pages = catalogue_pages()
    write_files(folder, pages)
    return Outcome(f"{len(pages)} pages written; begin with {printable_name(str(folder / 'index.html'))}\n")


def _table(name: str) -> str:
    known = table_names()
    if name not in known:
        raise CannotRunError(f"there is no table {name!r}; {_nearest(name, known, _TABLE)}")
    return printed_table(table(name))


def _stated(asked: str, arguments: argparse.Namespace) -> str:
    loaded = load(find_project(Path(arguments.path)))
    kind, *steps = asked.split(".")
    if kind != "project" and not any(steps) and loaded.spec is not None:
        listed = _records(getattr(loaded.spec, kind), kind)
        rest = "Of the shared range only what is used; name its folder with --path for the rest.\n"
        return listed if loaded.range is None or kind in OWN_KINDS else listed + rest
    known: Mapping[str, Node] = {} if loaded.spec is None else {"": loaded.spec.project}
    if kind != "project":
        known = {} if loaded.spec is None else getattr(loaded.spec, kind)
        key, *steps = steps or [""]
        path: tuple[str, ...] = (kind, key)
    else:
        key, path = "", (kind,)
    if key not in known:
        whole = ", ".join(known) or "none; `specgen check` says what is wrong"
        raise CannotRunError(f"there is no whole record {key!r} in {kind}; there is: {whole}")
    text = stated_where(known[key], path, tuple(steps), loaded, for_maker=arguments.audience == "maker")
    if not text:
        raise CannotRunError(f"{asked} states nothing; `specgen explain {'.'.join(path)}` lists what is stated")
    return printable(text)


def _records(records: Mapping[str, Node], kind: str) -> str:
    """A line for each record of a kind: its id, what it is called and what it is for."""
    wide = max((len(key) for key in records), default=0)
    lines = [f"{key:<{wide}}  {_called(record)}{_used_for(record)}".rstrip() for key, record in records.items()]
    return printable("".join(f"{line}\n" for line in lines) or f"there is none in {kind}\n")


def _called(record: Node) -> str:
    document = getattr(record, "document", None)
    names = (getattr(record, "title", None), getattr(record, "name", None), getattr(document, "title", None))
    return next((" ".join(str(name).split()) for name in names if name is not None), "")


def _used_for(record: Node) -> str:
    use = getattr(record, "use", None)
    return "" if use is None else f" ({' '.join(str(use).split())})"


def _working(wanted: str, arguments: argparse.Namespace) -> str:
    if not (arguments.job or arguments.product):
        raise CannotRunError("name whose figure it is, as in --job refit or --product primer")
    spec = load(find_project(Path(arguments.path))).spec
    for_maker = arguments.audience == "maker"
    kind, key = ("job", arguments.job) if arguments.job else ("product", arguments.product)
    records: Mapping[str, Job | Product] = {} if spec is None else spec.jobs if arguments.job else spec.products
    if spec is None or key not in records:
        whole = ", ".join(records) or "none; `specgen check` says what is wrong"
        raise CannotRunError(f"there is no whole {kind} {key!r}; there is: {whole}")
    found = {entry.id: entry for entry in _figures(records[key], spec, for_maker=for_maker)}
    if not wanted:
        return "".join(f"{_WORKING}{entry.id}  {entry.name}, {entry.printed()}\n" for entry in found.values())
    if wanted not in found:
        raise CannotRunError(f"the {kind} has no working {wanted!r}; {_nearest(wanted, found, _WORKING)}")
    return printed_working(found[wanted], found, for_maker=for_maker)


def _figures(subject: Job | Product, spec: Spec, *, for_maker: bool) -> Iterable[Working]:
    """Every figure of the job or product that the reader may see."""
    if isinstance(subject, Job):
        figures = quantities(subject, spec)
        return (*figures.workings(), *voc_let_off(subject, spec, figures.packs))
    of_product = product_figures(subject, spec, today())
    makers = frozenset() if for_maker else of_product.makers()
    return (entry for entry in of_product.workings() if entry.id not in makers)


def _nearest(asked: str, known: Iterable[str], prefix: str = "") -> str:
    close = get_close_matches(asked, known, n=3, cutoff=0.5)
    if close:
        return f"nearest: {', '.join(prefix + name for name in close)}"
    return "`specgen explain --list` lists them" if not prefix else f"there are: {', '.join(known)}"
