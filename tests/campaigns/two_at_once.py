"""Campaign: two who approve, issue, or issue and withdraw the same document at the same moment, each in a process of its own.

    python tests/campaigns/two_at_once.py [ROUNDS]

Of two who approve both approvals have to hold, on one salt. Of two who add a record one is first; the other is told that the number
was taken, or comes right after and adds to what the first left. The chain is whole after each round. Prints how the rounds ended;
ends with 1 at the first that did otherwise.
"""

from __future__ import annotations

import os
import shutil
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from specgen.issuing.refused import Refused
from specgen.register.approvals import collected
from specgen.register.chain import all_faults, left_behind
from specgen.register.failure import RegisterError, TakenError
from specgen.register.folder import histories
from specgen.register.notes import withdraw
from tests.good_spec import GOOD
from tests.register.conftest import Desk, later

DOCUMENT = "MS-001"
Act = Callable[[Desk], object]


def main() -> int:
    rounds = int(sys.argv[1]) if len(sys.argv) > 1 else 100
    begun = time.monotonic()
    with tempfile.TemporaryDirectory(prefix="two-") as place:
        blank = Desk(Path(shutil.copytree(GOOD, Path(place) / "blank")))
        second = Desk(Path(shutil.copytree(GOOD, Path(place) / "second")))
        second.revise()
        second.approve()
        for name, start, acts in (
            ("approve and approve", blank, (_check, _approve)),
            ("issue and issue", second, (_issue, _issue)),
            ("issue and withdraw", second, (_issue, _withdraw)),
        ):
            ends: Counter[str] = Counter()
            for _ in range(rounds):
                folder = Path(shutil.copytree(start.folder, Path(place) / "round"))
                came = sorted(_both(folder, acts))
                bad = _approved(folder) if name.startswith("approve") else _added(folder, came)
                if bad:
                    print(f"BROKEN: {name}: {came}: {bad}")
                    return 1
                ends[" and ".join(came)] += 1
                shutil.rmtree(folder)
            print(
                f"{name}: {rounds} rounds: {', '.join(f'{how} {number}' for how, number in sorted(ends.items()))}",
                flush=True,
            )
    print(f"{time.monotonic() - begun:.0f} s, no approval and no record lost")
    return 0


def _check(desk: Desk) -> None:
    desk.approve(role="check", name="Bo Reed", now=later(10))


def _approve(desk: Desk) -> None:
    desk.approve(now=later(10))


def _issue(desk: Desk) -> None:
    desk.issue(now=later(10))


def _withdraw(desk: Desk) -> None:
    # issuing looks before it writes, and a withdrawal takes no time: it comes somewhere in between
    time.sleep(int.from_bytes(os.urandom(1), "big") / 400)
    withdraw(desk.register, DOCUMENT, "A", reason="wrong", by="Ada Quill", now=later(10))


def _both(folder: Path, acts: tuple[Act, Act]) -> list[str]:
    """What each came to: `done`, `taken`, `refused`, or a fault by its words."""
    gate, go = os.pipe()
    running = []
    for act in acts:
        here, there = os.pipe()
        pid = os.fork()
        if not pid:
            os.close(go)
            os.read(gate, 1)
            os.write(there, _come_to(act, Desk(folder)).encode())
            os._exit(0)
        os.close(there)
        running.append((pid, here))
    # both wait for the end of this pipe
    os.close(go)
    os.close(gate)
    said = []
    for pid, here in running:
        said.append(os.read(here, 4096).decode() or "nothing")
        os.close(here)
        os.waitpid(pid, 0)
    return said


def _come_to(act: Act, desk: Desk) -> str:
    try:
        act(desk)
    except TakenError:
        return "taken"
    except Refused:
        return "refused"
    except BaseException as fault:  # noqa: BLE001  # whatever it dies of is told
        return f"{type(fault).__name__}: {fault}"
    return "done"


def _approved(folder: Path) -> str:
    try:
        held = collected(folder, DOCUMENT)
    except RegisterError as reason:
        return str(reason)
    salts = list((folder / "approvals" / DOCUMENT).glob("salt-*.json"))
    return "" if len(held) == 2 and len({one.approval.digest for one in held}) == len(salts) == 1 else f"{held} {salts}"


def _added(folder: Path, came: list[str]) -> str:
    register = folder / "register"
    (found,) = histories(register)
    faults = list(all_faults(found)) + left_behind(register)
    if set(came) - {"done", "taken", "refused"}:
        return f"{came}"
    if len(found.kept) != 1 + came.count("done"):
        faults.append(f"{len(found.kept)} records")
    return "; ".join(faults)


if __name__ == "__main__":
    sys.exit(main())
