"""Makes the registers of the demo anew, specs_demo/range/register and specs_demo/tramway/register, from the demo's sources and what
they said before.

    .venv/bin/python tests/campaigns/demo_register.py

The guard rails of tower wagon 32 (MS-3134) are issued three times and weaken on the way; the sheet of the primer (DS-210)
changes after the last of them, which leaves that revision suspect; the first sheet of the topcoat DS-310 is withdrawn. The doors of
tower wagon 31 (MS-3107) are issued once, and what was built of them (AB-MS-3107) when their readings release them.
Times, people and reasons are invented. Run it when the demo's sources or what is printed of them change.
"""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from specgen.issuing.approve import approve
from specgen.issuing.issue import issue
from specgen.register.notes import acknowledge, withdraw

ROOT = Path(__file__).resolve().parents[2]
DEMO = ROOT / "specs_demo"
# the folder a document is issued in, by the first letters of its number
_FOLDERS = {"DS": "range", "MS": "tramway", "AB": "tramway"}

CHECKER = ("check", "R. Halvorsen, Quality", "Figures and steps agree with the data sheets in force.")
APPROVER = ("approve", "M. Okonjo-Lind, Fleet engineer", "May be used on the vehicles it names.")

# of what was built, where nothing is left to be worked to
RECORD_CHECKER = ("check", CHECKER[1], "The record agrees with the readings that are kept.")
RECORD_APPROVER = ("approve", APPROVER[1], "The work is accepted as recorded.")

# What today's sources say, and what they said before: file, today's text, the text then.
Edit = tuple[str, str, str]

_JOB, _SYSTEMS, _PRIMER = "tramway/jobs/guard-rails.yaml", "range/systems.yaml", "range/products/epoxy_primer.yaml"

FIRST_SHEET: tuple[Edit, ...] = (
    (_PRIMER, "film: {min: 35 um, nominal: 55 um, max: 85 um, per_pass: 14 um", "film: {min: 35 um, nominal: 55 um, max: 90 um, per_pass: 14 um"),
    (_PRIMER, "storage_max: 50 degC", "storage_max: 45 degC"),
)  # fmt: skip
BEFORE_WEIGHING: tuple[Edit, ...] = (
    (
        _JOB,
        "Cans calculated from weighed rails, after the May job ran out of topcoat on the last rail.",
        "First issue.",
    ),
    (_JOB, "      transfer_efficiency: 26 %", "      transfer_efficiency: 32 %"),
)
STRICTER_FILM: tuple[Edit, ...] = (
    (_JOB, "criterion: {rule: own, min: 40 um, max: 80 um,", "criterion: {rule: own, min: 48 um, max: 80 um,"),
    (_JOB, "criterion: {rule: own, min: 98 um, max: 160 um,", "criterion: {rule: own, min: 106 um, max: 160 um,"),
    (_JOB, "readings: {spots: 48, readings: 144, from_edge: 25 mm}\n        frequency: 3 spots per bar, 1 per post, 3 readings around the tube per spot\n        criterion: {rule: own, min: 106 um", "readings: {spots: 64, readings: 192, from_edge: 25 mm}\n        frequency: 4 spots per bar, 1 per post, 3 readings around the tube per spot\n        criterion: {rule: own, min: 106 um"),
    (_JOB, "        if_failed: Measure again at twice the number of spots; if confirmed, call the technical desk.\n", "        hold_point: yes\n        if_failed: Measure again at twice the number of spots; if confirmed, call the technical desk.\n"),
    (_JOB, "humidity: 40..70 %, dew_point_margin: min 3 K", "humidity: 40..75 %, dew_point_margin: min 4 K"),
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Issued:
    """One issue: when, of which document, from which earlier state of the sources, why, and what is left out of them then."""

    at: str
    document: str
    reason: str
    before: tuple[Edit, ...] = ()
    without_waiver: bool = False


ISSUES = (
    Issued("2026-07-01T08:10:00", "DS-210", "First issue.", FIRST_SHEET),
    Issued("2026-07-01T08:40:00", "DS-410", "First issue."),
    Issued("2026-07-02T07:30:00", "DS-310", "First issue."),
    Issued("2026-07-08T09:15:00", "MS-3134", "First issue.", FIRST_SHEET + BEFORE_WEIGHING + STRICTER_FILM, without_waiver=True),
    Issued("2026-08-17T13:05:00", "MS-3134", "Cans calculated from weighed rails.", FIRST_SHEET + STRICTER_FILM),
    Issued("2026-10-12T10:20:00", "MS-3134", "Film limits as on the other rails; fewer spots.", FIRST_SHEET),
    Issued("2026-11-02T08:00:00", "DS-210", "Maximum DFT lowered after the September panels; warmer storage allowed."),
    Issued("2026-11-12T09:40:00", "MS-3107", "First issue."),
    Issued("2026-11-27T10:30:00", "AB-MS-3107", "Work finished; one spot of the skirt under a concession."),
)  # fmt: skip


def main() -> None:
    """Builds beside the demo and takes the old register's place only once all of it is there."""
    with tempfile.TemporaryDirectory() as place:
        registers = {folder: Path(place) / folder / "register" for folder in dict.fromkeys(_FOLDERS.values())}
        for number, entry in enumerate(ISSUES):
            _issue(entry, Path(place) / f"sources-{number}", registers)
        acknowledge(registers["tramway"], "MS-3134", "C", by="Body shop, Depot North", now=_time("2026-10-13T06:45:00"))
        withdraw(
            registers["range"],
            "DS-310",
            "A",
            reason="The sheet stated the abrasive paper for the previous can. A new sheet follows.",
            by=APPROVER[1],
            now=_time("2026-11-09T15:00:00"),
        )
        for folder, register in registers.items():
            there = DEMO / folder / "register"
            shutil.rmtree(there, ignore_errors=True)
            shutil.copytree(register, there)
            print(f"{len(list(there.glob('*/*')))} records in {there.relative_to(ROOT)}")


def _issue(entry: Issued, sources: Path, registers: Mapping[str, Path]) -> None:
    shutil.copytree(DEMO, sources, ignore=shutil.ignore_patterns("register", "approvals"))
    # a job rests on the sheets as they stand in the register of the range by then
    if registers["range"].exists():
        shutil.copytree(registers["range"], sources / "range/register")
    for file, today, then in entry.before:
        _replace(sources / file, today, then)
    if entry.without_waiver:
        job = sources / _JOB
        job.write_text(job.read_text("utf-8").partition("    waivers:\n")[0], "utf-8")
    now = _time(entry.at)
    own = _FOLDERS[entry.document[:2]]
    folder, register = sources / own, registers[own]
    built = entry.document.startswith("AB")
    for role, name, meaning in (RECORD_CHECKER, RECORD_APPROVER) if built else (CHECKER, APPROVER):
        approve(folder, register, entry.document, role=role, name=name, meaning=meaning, on=now.date(), now=now)
    done = issue(folder, register, entry.document, reason=entry.reason, on=now.date(), now=now)
    print(f"{entry.at[:10]}  {entry.document} {done.kept.record.revision}  {done.fingerprint}")


def _replace(path: Path, today: str, then: str) -> None:
    text = path.read_text("utf-8")
    if today not in text:
        raise SystemExit(f"{path.name} no longer says: {today}")
    path.write_text(text.replace(today, then, 1), "utf-8")


def _time(text: str) -> datetime:
    return datetime.fromisoformat(text).replace(tzinfo=UTC)


if __name__ == "__main__":
    main()
