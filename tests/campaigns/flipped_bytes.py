"""Campaign: one byte changed in what was issued. Every question then gets the answer it got before, or is told a fault in plain words.

    python tests/campaigns/flipped_bytes.py [FLIPS] [SEED]

Chains of the demo's register and one with signed approvals are asked by `register verify`, `show`, `list`, `as-of` and `verify FILE`,
as the command line asks them, in this process. `register verify` has to tell every change within a record. Outside the register: an
issued PDF, exports, a receipt, a signed approval that waits. A change is one bit, one byte, a byte more or less, or the end cut off.
Prints what was changed how often and how much of it was told; ends with 1 at the first silence, other answer or traceback, and says
which byte. Interrupted, it prints what it has come to.
"""

from __future__ import annotations

import io
import random
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import redirect_stderr, redirect_stdout
from dataclasses import dataclass
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from specgen.commands import main as specgen
from specgen.commands.outcome import CannotRunError
from specgen.commands.register_side import issued_pdf, issued_zip, revision_at
from specgen.model.declaring import Audience
from specgen.register.approvals import collected, conflicts
from specgen.register.export import export
from specgen.register.failure import RegisterError
from specgen.register.frozen import issued_revision
from specgen.register.receipt import receipt
from specgen.register.signatures import NAMESPACE
from tests.register.conftest import Desk

_DEMOS = Path(__file__).resolve().parents[2] / "specs_demo"
_LATER = "2099-01-01"

Answer = tuple[int, str]
"""The exit code, and all that was said."""
Question = Callable[[], Answer]


@dataclass(frozen=True)
class Target:
    """Files of one kind, the questions that rest on them, and whether each change of them has to be told by the first."""

    name: str
    files: tuple[Path, ...]
    questions: tuple[Question, ...]
    always_told: bool = False


def main() -> int:
    flips = int(sys.argv[1]) if len(sys.argv) > 1 else 2000
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else 5
    chance, tried, told = random.Random(seed), Counter[str](), Counter[str]()
    begun = time.monotonic()
    with tempfile.TemporaryDirectory(prefix="flipped-") as place:
        targets = list(_targets(Path(place)))
        before = {at: [question() for question in target.questions] for at, target in enumerate(targets)}
        for number in _until_interrupted(flips):
            at = chance.randrange(len(targets))
            target = targets[at]
            file = chance.choice(target.files)
            whole = file.read_bytes()
            how, changed = _changed(whole, chance)
            if changed == whole:
                continue
            file.write_bytes(changed)
            answers = [question() for question in target.questions]
            file.write_bytes(whole)
            tried[target.name] += 1
            pairs = list(zip(before[at], answers, strict=True))
            told[target.name] += any(_told(was, now) for was, now in pairs)
            for was, now in pairs:
                bad = _bad(was, now)
                if target.always_told and now is answers[0] and not _told(was, now):
                    bad = "was not told"
                if bad:
                    print(
                        f"{bad}: flip {number}, seed {seed}, {file.relative_to(place)}, {how}\n before {was}\n after  {now}"
                    )
                    return 1
        if [[question() for question in target.questions] for target in targets] != list(before.values()):
            print("asking left something changed")
            return 1
    print(
        f"{sum(tried.values())} changes, seed {seed}, {time.monotonic() - begun:.0f} s: never another answer, a traceback or silence"
    )
    for name, number in sorted(tried.items()):
        print(f"  {name}: {number}, of which {told[name]} were told; the others changed no answer")
    return 0


def _until_interrupted(most: int) -> Iterator[int]:
    stopped: list[int] = []
    signal.signal(signal.SIGINT, lambda number, _: stopped.append(number))
    yield from (number for number in range(most) if not stopped)


def _bad(was: Answer, now: Answer) -> str:
    if any(word in now[1] for word in ("Traceback", "internal fault")):
        return "no plain words"
    if now != was and not _told(was, now):
        return "another answer"
    return "nothing said" if not now[1].strip() else ""


def _told(was: Answer, now: Answer) -> bool:
    """Whether a fault was told: by another code than before, or, where 1 was the answer of a file out of date, by its words."""
    new = any(word in now[1] and word not in was[1] for word in ("damaged", "altered", "knows no", "does not know"))
    return now[0] != 0 and (now[0] != was[0] or new)


def _changed(whole: bytes, chance: random.Random) -> tuple[str, bytes]:
    at = chance.randrange(len(whole))
    kind = chance.choice(("bit", "bit", "byte", "more", "less", "cut"))
    if kind == "bit":
        new = bytes([whole[at] ^ 1 << chance.randrange(8)])
    elif kind == "byte":
        new = bytes([chance.randrange(256)])
    elif kind == "more":
        new = bytes([chance.randrange(256), whole[at]])
    else:
        new = b""
    rest = b"" if kind == "cut" else whole[at + 1 :]
    return f"{kind} at {at} of {len(whole)}: {whole[at : at + 1]!r} to {new!r}", whole[:at] + new + rest


def _targets(place: Path) -> Iterator[Target]:
    # both registers of the demo as one
    demo = Path(shutil.copytree(_DEMOS / "tramway/register", place / "demo"))
    shutil.copytree(_DEMOS / "range/register", demo, dirs_exist_ok=True)
    for document in ("MS-3134", "DS-310", "DS-210"):
        register = place / document
        shutil.copytree(demo / document, register / document)
        yield from _of_chain(register, document)
    desk = _signed(place / "signed")
    yield from _of_chain(desk.register, "MS-001")
    waiting = tuple(sorted((desk.folder / "approvals/MS-001").glob("approve*")))
    yield Target(
        "signed approval that waits", (*waiting, desk.folder / "allowed_signers"), (lambda: _waiting(desk.folder),)
    )
    yield from _outside(place, demo)


def _of_chain(register: Path, document: str) -> Iterator[Target]:
    chain = register / document
    pdf = max(chain.glob("*/documents/*.pdf"))
    beside = register.parent / f"{document}.pdf"
    shutil.copyfile(pdf, beside)
    revision = "B" if document == "MS-3134" else "A"
    end = ["--path", str(register.parent), "--register", str(register)]
    questions = (
        *(_command("register", *ask, *end) for ask in (["verify"], ["show", document], ["list"], ["as-of", _LATER])),
        _command("verify", str(beside), "--register", str(register)),
        _side(revision_at, f"{register}:{document}@{revision}"),
    )
    for kind in (
        "record.json",
        "SHA256SUMS",
        "certificate.json",
        "model.*.json",
        "approvals/*",
        "sources/**/*.txt",
        "documents/*",
    ):
        files = tuple(sorted(chain.glob(f"*/{kind}")))
        if files:
            yield Target(kind.partition("/")[0], files, questions, always_told=True)


def _outside(place: Path, demo: Path) -> Iterator[Target]:
    kept = issued_revision(demo, "MS-3134", "C")
    pdf = Path(shutil.copyfile(next(kept.folder.glob("documents/*statement.pdf")), place / "out.pdf"))
    asked = _command("verify", str(pdf), "--register", str(demo))
    yield Target("issued PDF against the register", (pdf,), (asked,), always_told=True)
    yield Target("issued PDF alone", (pdf,), (_command("verify", str(pdf)), _side(issued_pdf, pdf)))
    for audience in Audience:
        if audience.value in ("customer", "maker"):
            file = place / f"{audience.value}.zip"
            file.write_bytes(export(kept, audience, "the maker"))
            yield Target("export", (file,), (_side(issued_zip, file),))
    written = place / "receipt.json"
    written.write_bytes(receipt(demo))
    end = ["--receipt", str(written), "--path", str(demo), "--register", str(demo)]
    yield Target("receipt", (written,), (_command("register", "verify", *end),))


def _signed(place: Path) -> Desk:
    """A chain of two revisions, approved with a signature, and a signed approval of the third."""
    good = Path(__file__).resolve().parents[1] / "good"
    desk = Desk(Path(shutil.copytree(good, place / "specs")))
    key = place / "key"
    subprocess.run(["ssh-keygen", "-q", "-t", "ed25519", "-N", "", "-f", str(key)], check=True)
    (desk.folder / "allowed_signers").write_text(f"ada.quill@example.org {key.with_suffix('.pub').read_text()}")
    for last in (False, False, True):
        path = desk.approve().path
        subprocess.run(
            ["ssh-keygen", "-q", "-Y", "sign", "-n", NAMESPACE, "-f", str(key), str(path)],
            check=True,
            capture_output=True,
        )
        if not last:
            desk.issue()
    return desk


def _command(*arguments: str) -> Question:
    def ask() -> Answer:
        out, err = io.StringIO(), io.StringIO()
        with redirect_stdout(out), redirect_stderr(err):
            code = specgen(arguments)
        return code, f"{out.getvalue()}{err.getvalue()}"

    return ask


def _side(read: Callable[[Any], object], side: object) -> Question:
    """A side of a comparison as far as it is read: what is compared after that is what was read."""

    def ask() -> Answer:
        try:
            return 0, repr(read(side))
        except CannotRunError as reason:
            return 2, str(reason)

    return ask


def _waiting(folder: Path) -> Answer:
    try:
        found = collected(folder, "MS-001")
    except RegisterError as reason:
        return 2, str(reason)
    against = list(conflicts(found, "Technical desk"))
    return 2 * bool(against), repr((against, [(one.approval, one.signer) for one in found]))


if __name__ == "__main__":
    sys.exit(main())
