"""DOC003 A document number makes a unique file name

Checks
    The number of each job and of each data sheet can be part of a file name on every common system, and no two jobs and no two data sheets give the same name; and no document has the number of a job's as-built record, `AB-` and the number of the job. In a file name only letters, digits, point and hyphen are kept as they are, and capitals make no difference.
Why
    Where two documents share one file name, or the name cannot be written, none of the documents in the folder is printed.
Passes
    jobs.refit.document.number: MS_002

    Given second good
    jobs.lids.document.number: MS-201a

    Given second good
    jobs.lids.document.number: AB-MS-7
Fails
    jobs.refit.document.number: COM1.x    # at jobs.refit.document.number

    products.primer.document: {number: aux.pdf, title: Primer, owner: Technical desk}    # at products.primer.document.number

    products.clear.document: {number: ds_BASE, title: Clear, owner: Technical desk}    # at products.clear.document.number

    Given second good
    jobs.lids.document.number: ms-201    # at jobs.lids.document.number

    products.clear.document: {number: DS-1, title: Clear, owner: Technical desk}
    products.barrier.document: {number: ds-1, title: Barrier, owner: Technical desk}    # at products.barrier.document.number

    products.primer.document: {number: DS-BARRIER, title: Primer, owner: Technical desk}    # at products.barrier.id

    Given second good
    jobs.lids.document.number: ab-MS-201    # at jobs.lids.document.number

    products.primer.document: {number: AB-MS-001, title: Primer, owner: Technical desk}    # at products.primer.document.number
To put right
    Give the document another number.
"""

from specgen.model.file_names import file_stem, name_fault, record_number, sheet_number
from specgen.rules.kit import ERROR, LOGIC, Path, Problem, Problems, Project, Spec, date, rule


@rule("DOC003", on=Project, severity=ERROR, source=LOGIC)
def number_makes_a_file(project: Project, spec: Spec, on: date) -> Problems:
    jobs: list[tuple[Path, str]] = [
        (("jobs", job.id, "document", "number"), job.document.number) for job in spec.jobs.values()
    ]
    yield from _judged(jobs)
    yield from _judged(
        [(("offers", one.id, "document", "number"), one.document.number) for one in spec.offers.values()]
    )
    sheets: list[tuple[Path, str]] = [
        (
            ("products", product.id, *(("document", "number") if product.document is not None else ("id",))),
            sheet_number(product),
        )
        for product in spec.products.values()
    ]
    yield from _judged(sheets)
    records = {file_stem(record_number(job)).casefold(): job for job in spec.jobs.values()}
    for path, number in [*jobs, *sheets]:
        job = records.get(file_stem(number).casefold())
        if job is not None:
            yield Problem(
                path, f"the document number {number} is that of the as-built record of {job.id}", absolute=True
            )


def _judged(numbers: list[tuple[Path, str]]) -> Problems:
    """Numbers of documents of the same kind, each with its address."""
    taken: dict[str, str] = {}
    for path, number in numbers:
        stem = file_stem(number)
        # the kind of document follows in every file name
        if reason := name_fault(f"{stem}-x.pdf"):
            yield Problem(path, f"the document number {number} cannot begin a file name: {reason}", absolute=True)
        elif other := taken.get(stem.casefold()):
            what = f"the document numbers {other} and {number} give the same file name, {stem}"
            yield Problem(path, what, absolute=True)
        taken.setdefault(stem.casefold(), number)
