"""Campaign: kill -9 at random moments of approving, issuing, withdrawing, acknowledging, exporting and writing receipts, by one or two
at once; the register has the old state or the new.

    python tests/campaigns/kill_while_issuing.py [KILLS] [SEED]

Each round forks one or two processes that do all of it in a loop, kills them after a random time, and then asks of the register: every
fault `register verify` knows, that the chain only grew, that nothing of the last whole state changed; of approvals, exports and
receipts, that each that is there can be read whole. Pages are stubs, so that many kills fall into writing and renaming. Prints its figures; ends with 1 at the first broken state, which it leaves in place.
"""

from __future__ import annotations

import os
import random
import shutil
import signal
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from specgen.commands.targets import write_file
from specgen.issuing.approve import approve
from specgen.issuing.candidate import Candidate, Refused
from specgen.issuing.issue import issue
from specgen.model.declaring import Audience
from specgen.printing.files import Issue
from specgen.register.approvals import collected
from specgen.register.chain import all_faults, left_behind
from specgen.register.export import export, is_export
from specgen.register.failure import RegisterError, TakenError
from specgen.register.folder import histories
from specgen.register.history import History
from specgen.register.notes import acknowledge, withdraw
from specgen.register.receipt import is_receipt, receipt
from tests.good_spec import GOOD, ON

DOCUMENT, NAME, HOLDER = "MS-001", "Ada Quill", "Depot North"
BEGIN = datetime(2026, 11, 25, tzinfo=UTC)


def main() -> int:
    kills = int(sys.argv[1]) if len(sys.argv) > 1 else 500
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else 7
    chance = random.Random(seed)
    work = Path(tempfile.mkdtemp(prefix="kill-"))
    folder, register = work / "specs", work / "specs" / "register"
    shutil.copytree(GOOD, folder)
    with (folder / "project.yaml").open("a") as out:
        out.write(f"  distribution: [{{id: depot, name: {HOLDER}}}]\n")
    counts: Counter[str] = Counter()
    known: tuple[str, ...] = ()
    begun = time.monotonic()
    while counts["killed"] < kills:
        pids = [_fork(work, counts["round"] * 4000 + at) for at in range(chance.choice((1, 1, 2)))]
        time.sleep(chance.uniform(0.0, 1.5))
        for pid in pids:
            os.kill(pid, signal.SIGKILL)
            os.waitpid(pid, 0)
            counts["killed"] += 1
        counts["round"] += 1
        counts["stages left behind"] += len(left_behind(register))
        found = histories(register)[0] if register.exists() and histories(register) else History(DOCUMENT)
        faults = [*all_faults(found), *_unreadable(folder, work)]
        now = tuple(one.sha256 for one in found.kept)
        if faults or now[: len(known)] != known:
            print(f"BROKEN after {counts['killed']} kills, seed {seed}, {work}: {faults or 'the chain lost a record'}")
            return 1
        counts["grew"] += len(now) > len(known)
        known = now
        for name in left_behind(register):
            shutil.rmtree(register / name)
        if len(known) > 60:
            # a long chain makes each look at it slow, and a new document is as good
            counts["records"] += len(known)
            shutil.rmtree(register)
            (work / "receipt.json").unlink(missing_ok=True)
            known = ()
    counts["records"] += len(known)
    print(
        f"{counts['killed']} kills in {counts['round']} rounds, {time.monotonic() - begun:.0f} s, seed {seed}: "
        f"{counts['records']} records came whole, {counts['grew']} rounds grew the chain, "
        f"{counts['stages left behind']} stages left behind and never taken for a record, no broken state"
    )
    shutil.rmtree(work)
    return 0


def _fork(work: Path, minute: int) -> int:
    folder, register = work / "specs", work / "specs" / "register"
    pid = os.fork()
    if pid:
        return pid
    try:
        while True:
            minute += 1
            moment = BEGIN + timedelta(minutes=minute)
            try:
                approve(folder, register, DOCUMENT, role="approve", name=NAME, meaning="m", on=ON, now=moment)
                done = issue(
                    folder, register, DOCUMENT, reason="again", on=ON, now=moment, printer=_stub, versions=dict
                )
                revision = done.kept.record.revision
                acknowledge(register, DOCUMENT, revision, by=HOLDER, now=moment)
                write_file(work / "receipt.json", receipt(register), is_receipt)
                write_file(work / "export.zip", export(done.kept, Audience.CUSTOMER, "the maker"), is_export)
                if minute % 5 == 0:
                    withdraw(register, DOCUMENT, revision, reason="x", by="y", now=moment)
            except (TakenError, Refused):
                # the other one was first, or approved the next revision meanwhile
                pass
            except RegisterError as reason:
                # two processes whose clocks differ: the one behind is refused, as it should be
                if "set the clock" not in str(reason):
                    raise
    except BaseException as fault:  # noqa: BLE001  # whatever a child dies of is told before it goes
        print(f"CHILD: {type(fault).__name__}: {fault}", file=sys.stderr)
    finally:
        os._exit(3)


def _unreadable(folder: Path, work: Path) -> Iterator[str]:
    """What a kill left half written among the files that are written one by one."""
    try:
        collected(folder, DOCUMENT)
    except RegisterError as reason:
        yield str(reason)
    for name, whole in (("receipt.json", is_receipt), ("export.zip", is_export)):
        if (work / name).exists() and not whole(work / name):
            yield f"{name} is not whole"


def _stub(found: Candidate, issued: Issue) -> dict[str, bytes]:
    return {f"{found.document}-{n}.pdf": os.urandom(100_000) for n in range(12)}


if __name__ == "__main__":
    sys.exit(main())
