"""Campaign: kill -9 at random moments of approving, issuing, withdrawing, acknowledging, exporting and writing receipts, by one or two
at once; the register has the old state or the new.

    python tests/campaigns/kill_while_issuing.py [KILLS] [SEED]

Each round forks one or two processes that do all of it once and tell each step through a pipe before they take it. Of every two rounds
one kills at a moment drawn evenly from the length of an undisturbed run, so that kills fall everywhere; the other waits for a step
drawn from those of that run and kills within it, so that the short ones (writing, renaming) are hit as often as the long. The
undisturbed run is measured again with every new chain. Then the register is asked: every fault `register verify` knows, that the chain
only grew, that each record a process said was kept is there, that the receipt on disk finds nothing lost; of approvals, exports and
receipts, that each can be read whole. Pages are stubs, so that many kills fall into writing. Prints where the kills fell; ends with 1
at the first broken state, which it leaves in place. Interrupted, it prints what it has come to.
"""

from __future__ import annotations

import os
import random
import select
import shutil
import signal
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from specgen.commands.targets import write_file
from specgen.issuing.approve import approve
from specgen.issuing.candidate import Candidate
from specgen.issuing.issue import issue
from specgen.issuing.refused import Refused
from specgen.model.declaring import Audience
from specgen.printing.files import Issue
from specgen.register.approvals import collected
from specgen.register.chain import all_faults, left_behind
from specgen.register.export import export, is_export
from specgen.register.failure import RegisterError, TakenError
from specgen.register.folder import histories
from specgen.register.history import History
from specgen.register.notes import acknowledge, withdraw
from specgen.register.receipt import is_receipt, lost_since, receipt
from tests.good_spec import GOOD, ON

DOCUMENT, NAME, HOLDER = "MS-001", "Ada Quill", "Depot North"
BEGIN = datetime(2026, 11, 25, tzinfo=UTC)
LONGEST_CHAIN = 40
END, REFUSED, KEPT = "end", "refused", "kept"


@dataclass
class Child:
    """A process at work, and what it has told so far: each step with the moment it was heard."""

    pid: int
    pipe: int
    told: list[tuple[float, str]]
    rest: bytes = b""

    def listen(self, until: float, step: str = "") -> None:
        """Hears it until the moment, its end, or the step named."""
        while (left := until - time.monotonic()) > 0:
            if not select.select([self.pipe], [], [], left)[0]:
                return
            piece = os.read(self.pipe, 65536)
            *lines, self.rest = (self.rest + piece).split(b"\n")
            self.told += [(time.monotonic(), line.decode()) for line in lines]
            if not piece or (step and any(line.decode() == step for line in lines)):
                return

    def kill(self) -> None:
        os.kill(self.pid, signal.SIGKILL)
        os.waitpid(self.pid, 0)
        # what it wrote before it went
        self.listen(time.monotonic() + 5)
        os.close(self.pipe)

    @property
    def steps(self) -> list[str]:
        return [line for _, line in self.told if not line.startswith(KEPT)]

    @property
    def kept(self) -> list[str]:
        return [line.partition(" ")[2] for _, line in self.told if line.startswith(KEPT)]


def main() -> int:
    kills = int(sys.argv[1]) if len(sys.argv) > 1 else 500
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else 7
    chance = random.Random(seed)
    work = Path(tempfile.mkdtemp(prefix="kill-"))
    folder, register = work / "specs", work / "specs" / "register"
    shutil.copytree(GOOD, folder)
    with (folder / "project.yaml").open("a") as out:
        out.write(f"  distribution: [{{id: depot, name: {HOLDER}}}]\n")
    _load_everything(folder)
    counts: Counter[str] = Counter()
    fell: Counter[str] = Counter()
    lengths: list[float] = []
    whole: list[tuple[float, str]] = []
    known: tuple[str, ...] = ()
    begun = time.monotonic()
    stopped: list[int] = []
    signal.signal(signal.SIGINT, lambda number, _: stopped.append(number))
    while counts["killed"] < kills and not stopped:
        counts["round"] += 1
        if not known:
            whole = _undisturbed(work, counts["round"])
            lengths.append(whole[-1][0] - whole[0][0])
            known = tuple(line.partition(" ")[2] for _, line in whole if line.startswith(KEPT))
            counts["records"] += len(known)
            continue
        forked = [_fork(work, counts["round"] * 4 + at) for at in range(chance.choice((1, 1, 2)))]
        _wait(forked[0], whole, chance, evenly=counts["round"] % 2 == 0)
        for child in forked:
            child.kill()
            counts["killed"] += 1
            fell[_where(child)] += 1
        counts["stages left behind"] += len(left_behind(register))
        counts["temporary files left behind"] += _cleared(work)
        found = histories(register)[0] if register.exists() and histories(register) else History(DOCUMENT)
        now = tuple(one.sha256 for one in found.kept)
        faults = [*all_faults(found), *_unreadable(folder, work, found)]
        faults += ["the chain lost a record"] * (now[: len(known)] != known)
        faults += [f"{one} was kept and is gone" for child in forked for one in child.kept if one not in now]
        if faults:
            print(f"BROKEN after {counts['killed']} kills, seed {seed}, {work}: {faults}")
            return 1
        counts["grew"] += len(now) > len(known)
        counts["records"] += len(now) - len(known)
        known = now
        for name in left_behind(register):
            shutil.rmtree(register / name)
        if len(known) > LONGEST_CHAIN:
            # a long chain makes each look at it slow, and a new document is as good
            shutil.rmtree(register)
            (work / "receipt.json").unlink(missing_ok=True)
            known = ()
    print(
        f"{counts['killed']} kills in {counts['round']} rounds, {time.monotonic() - begun:.0f} s, seed {seed}; an undisturbed run "
        f"takes {min(lengths):.2f} to {max(lengths):.2f} s\n"
        f"where they fell: {', '.join(f'{where} {number}' for where, number in sorted(fell.items()))}\n"
        f"{counts['records']} records came whole, {counts['grew']} rounds grew the chain, {counts['stages left behind']} stages and "
        f"{counts['temporary files left behind']} temporary files left behind and never taken for a record; no broken state"
    )
    shutil.rmtree(work)
    return 0


def _load_everything(folder: Path) -> None:
    """Modules and tables are loaded once, here: a process that loads them first spends most of its life on that."""
    with tempfile.TemporaryDirectory() as place, Path(os.devnull).open("w") as nowhere:
        shutil.copytree(folder, Path(place) / "specs")
        _run(Path(place), BEGIN, nowhere.fileno())


def _undisturbed(work: Path, number: int) -> list[tuple[float, str]]:
    """The steps of a run that nobody kills, each with its moment."""
    child = _fork(work, number * 4)
    while not child.told or child.told[-1][1] != END:
        child.listen(time.monotonic() + 60)
        if child.told[-1:] and child.told[-1][1] == REFUSED:
            raise SystemExit("an undisturbed run was refused")
    child.kill()
    return child.told


def _wait(child: Child, whole: list[tuple[float, str]], chance: random.Random, *, evenly: bool) -> None:
    if evenly:
        # a tenth beyond its end, so that some fall after it
        child.listen(time.monotonic() + (whole[-1][0] - whole[0][0]) * chance.uniform(0.0, 1.1))
        return
    at = chance.randrange(len(whole) - 1)
    while whole[at][1].startswith(KEPT):
        at -= 1
    child.listen(time.monotonic() + 60, whole[at][1])
    child.listen(time.monotonic() + (whole[at + 1][0] - whole[at][0]) * chance.uniform(0.0, 1.0))


def _where(child: Child) -> str:
    if not child.steps:
        return "before"
    last = child.steps[-1]
    return "after" if last == END else "already refused" if last == REFUSED else f"within {last.partition(':')[0]}"


def _fork(work: Path, minute: int) -> Child:
    here, there = os.pipe()
    pid = os.fork()
    if pid:
        os.close(there)
        return Child(pid, here, [])
    try:
        _run(work, BEGIN + timedelta(minutes=minute), there)
    except (TakenError, Refused):
        # the other one was first, or approved the next revision meanwhile
        _tell(there, REFUSED)
    except RegisterError as reason:
        # two processes whose clocks differ: the one behind is refused, as it should be
        if "set the clock" not in str(reason):
            print(f"CHILD: {reason}", file=sys.stderr)
        _tell(there, REFUSED)
    except BaseException as fault:  # noqa: BLE001  # whatever a child dies of is told before it goes
        print(f"CHILD: {type(fault).__name__}: {fault}", file=sys.stderr)
    finally:
        os._exit(3)


def _run(work: Path, moment: datetime, there: int) -> None:
    folder, register = work / "specs", work / "specs" / "register"

    def within(action: str, step: str = "") -> None:
        _tell(there, f"{action}: {step}")

    within("approve")
    approve(folder, register, DOCUMENT, role="approve", name=NAME, meaning="m", on=ON, now=moment)
    done = issue(
        folder,
        register,
        DOCUMENT,
        reason="again",
        on=ON,
        now=moment,
        printer=_stub,
        versions=dict,
        step=lambda step: within("issue", step),
    )
    revision = done.kept.record.revision
    _tell(there, f"{KEPT} {done.kept.sha256}")
    had = acknowledge(
        register, DOCUMENT, revision, by=HOLDER, now=moment, step=lambda step: within("acknowledge", step)
    )
    _tell(there, f"{KEPT} {had.sha256}")
    within("receipt")
    write_file(work / "receipt.json", receipt(register), is_receipt)
    within("export")
    write_file(work / "export.zip", export(done.kept, Audience.CUSTOMER, "the maker"), is_export)
    out = withdraw(
        register, DOCUMENT, revision, reason="x", by="y", now=moment, step=lambda step: within("withdraw", step)
    )
    _tell(there, f"{KEPT} {out.sha256}")
    _tell(there, END)


def _tell(there: int, line: str) -> None:
    os.write(there, f"{line}\n".encode())


def _unreadable(folder: Path, work: Path, found: History) -> Iterator[str]:
    """What a kill left half written among the files that are written one by one, and what the receipt misses."""
    try:
        collected(folder, DOCUMENT)
    except RegisterError as reason:
        yield str(reason)
    for name, whole in (("receipt.json", is_receipt), ("export.zip", is_export)):
        if (work / name).exists() and not whole(work / name):
            yield f"{name} is not whole"
    if (work / "receipt.json").exists():
        yield from lost_since((work / "receipt.json").read_bytes(), [found])


def _cleared(work: Path) -> int:
    left = [*work.glob(".*.tmp"), *work.glob("specs/approvals/*/.*.tmp")]
    for one in left:
        one.unlink()
    return len(left)


def _stub(found: Candidate, issued: Issue) -> dict[str, bytes]:
    return {f"{found.document}-{n}.pdf": os.urandom(100_000) for n in range(12)}


if __name__ == "__main__":
    sys.exit(main())
