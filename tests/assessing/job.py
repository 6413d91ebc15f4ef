"""The good specification with points that read film, salt, air and words, and readings as text, for the tests of this folder."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date

from specgen.assessing.assessment import assess
from specgen.assessing.cells import Dates
from specgen.assessing.faults import Faults
from specgen.assessing.readings import Asked, File, records_of
from specgen.assessing.results import Assessment, Verdict
from specgen.model.spec import Spec
from tests.good_spec import good_with, spec_of

DAY = date(2026, 11, 27)
FILM = "jobs.refit.inspection.primer-film"
OWN = "{rule: own, min: 40 um, max: 80 um, each: spot}"
CHECKED = {"gauge": "magnetic gauge", "serial": "K-1", "checked_on": "2026-11-10"}
PA_2 = "{rule: SSPC-PA-2, edition: '2012', level: 3, min: 40 um, max: 80 um}"


def assessed(
    *texts: str | bytes,
    criterion: str = OWN,
    changes: Mapping[str, str] | None = None,
    asked: Asked | None = None,
    dates: Dates = Dates.ISO,
) -> Assessment:
    """The readings of the job `refit`, with its primer film under `criterion`; their gauge was checked unless `asked` says otherwise."""
    spec = spec_of(good_with({f"{FILM}.criterion": criterion, **(changes or {})}, ()))
    return assessed_job(spec, "refit", _files(texts), asked or Asked(fixed=CHECKED), dates)


def assessed_job(
    spec: Spec, job: str, files: Sequence[File], asked: Asked | None = None, dates: Dates = Dates.ISO
) -> Assessment:
    """Files of readings of any job."""
    faults = Faults()
    records = records_of(files, asked or Asked(), faults)
    return assess(spec.jobs[job], spec, records, faults, day=DAY, files=files, dates=dates)


def _files(texts: Sequence[str | bytes]) -> list[File]:
    return [
        File(f"{number}.csv", text if isinstance(text, bytes) else text.encode("utf-8"))
        for number, text in enumerate(texts, 1)
    ]


def told(found: Assessment) -> list[tuple[str, int, int]]:
    """Id, row and column of every finding that is an error."""
    return [(one.id, one.place.line, one.place.column) for one in found.findings if one.severity.value == "error"]


def film_on(found: Assessment, item: str = "DOOR") -> Verdict:
    return next(at.verdict for at in found.results if (at.point.id, at.item.id) == ("primer-film", item))


def reasons(found: Assessment, item: str = "DOOR") -> str:
    said = next(at.reasons for at in found.results if (at.point.id, at.item.id) == ("primer-film", item))
    return "; ".join(said).replace("\N{NO-BREAK SPACE}", " ")


def spots(*means: float, item: str = "DOOR", heading: bool = True) -> str:
    """Three readings a spot around each mean."""
    rows = [
        f"primer-film,{item},{spot},{reading},{mean + apart},um"
        for spot, mean in enumerate(means, 1)
        for reading, apart in enumerate((-1, 0, 1), 1)
    ]
    return "\n".join([*(["point,item,spot,reading,value,unit"] if heading else []), *rows]) + "\n"
