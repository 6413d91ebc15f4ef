"""Figures of a register of 2,000 revisions: `register verify`, `register as-of` and `verify FILE`, time and memory of the whole process.

    python tests/campaigns/register_speed.py [DOCUMENTS] [REVISIONS] [KILOBYTES]

By default 100 documents of 20 revisions with a PDF of 400 kB each. Nothing here fails on time.
"""

from __future__ import annotations

import os
import resource
import shutil
import subprocess
import sys
import tempfile
import time
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from specgen.issuing.issue import issue
from specgen.register.certificate import certificate_text, read_certificate
from specgen.register.folder import append
from specgen.register.json_text import sha256
from specgen.register.record import file_hashes
from tests.good_spec import GOOD, ON

BEGIN = datetime(2026, 1, 1, tzinfo=UTC)


def main() -> None:
    documents, revisions, kilobytes = (int(one) for one in (*sys.argv[1:], *("100", "20", "400")[len(sys.argv) - 1 :]))
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place) / "specs"
        shutil.copytree(GOOD, folder)
        begun = time.perf_counter()
        _fill(folder, documents, revisions, kilobytes * 1000)
        size = sum(path.stat().st_size for path in folder.rglob("*") if path.is_file())
        print(f"{documents * revisions} revisions, {size / 1e6:.0f} MB, made in {time.perf_counter() - begun:.0f} s")
        pdf = next((folder / "register").glob("DOC-0/0001/documents/*.pdf"))
        _timed("register verify", ["register", "verify", "--path", str(folder)])
        _timed("register as-of 2026-03-01", ["register", "as-of", "2026-03-01", "--path", str(folder)])
        _timed("register list", ["register", "list", "--path", str(folder)])
        _timed("verify FILE --register", ["verify", str(pdf), "--register", str(folder / "register")])


def _fill(folder: Path, documents: int, revisions: int, size: int) -> None:
    """One real revision, then copies of it under other numbers with records and certificates that hold together."""
    with (folder / "project.yaml").open("a") as out:
        out.write("  policies: {approvals_needed: 0}\n")
    model = issue(
        folder,
        Path(folder.parent, "first"),
        "MS-001",
        reason="first",
        on=ON,
        now=BEGIN,
        printer=lambda found, issued: {"x.pdf": b"x"},
        versions=dict,
    ).kept
    held = {name: (model.folder / name).read_bytes() for name in model.record.files if name != "documents/x.pdf"}
    for document in range(documents):
        previous, certified = "", ""
        for number in range(1, revisions + 1):
            time_ = (BEGIN + timedelta(days=number)).strftime("%Y-%m-%dT%H:%M:%SZ")
            certificate = replace(
                read_certificate(held["certificate.json"]),
                document=f"DOC-{document}",
                revision=str(number),
                issued=time_,
                previous=certified,
            )
            text = certificate_text(certificate)
            files = {**held, "certificate.json": text, "documents/x.pdf": os.urandom(size)}
            certified = sha256(text)
            record = replace(
                model.record,
                document=f"DOC-{document}",
                revision=str(number),
                number=number,
                time=time_,
                certificate=certified,
                previous=previous,
                files=file_hashes(files),
            )
            previous = append(folder / "register", record, files).sha256


def _timed(name: str, arguments: list[str]) -> None:
    begun = time.perf_counter()
    done = subprocess.run([sys.executable, "-m", "specgen", *arguments], capture_output=True, text=True, check=False)
    took = time.perf_counter() - begun
    peak = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024
    told = (done.stdout or done.stderr).strip().splitlines()[-1:]
    print(f"{name}: {took:.2f} s, at most {peak:.0f} MB so far, exit code {done.returncode}: {told[0] if told else ''}")


if __name__ == "__main__":
    main()
