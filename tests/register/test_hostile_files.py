"""Zips, records and models made to cost memory are refused in plain words, and nothing is issued that could not be read again."""

from __future__ import annotations

import struct
import subprocess
import sys
from pathlib import Path

import pytest

from specgen.model.declaring import Audience
from specgen.register import export, folder
from specgen.register.chain import all_faults
from specgen.register.failure import RegisterError
from specgen.register.folder import histories
from specgen.register.json_text import loosely
from specgen.source import bounded_json
from tests.good_spec import GOOD
from tests.register.conftest import Desk


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (b'{"a":[' + b"[]," * 300_000 + b"[]]}", "holds more than 500,000 values"),
        (b'{"a":"' + b"x" * 16 * 1024 * 1024 + b'"}', "is larger than 16 MiB"),
        (b'{"a":' + b"9" * 5_000 + b"}", "a number is too long"),
        (b'{"a":' + b"[" * 200_000, "nested too deeply"),
    ],
)
def test_a_text_that_would_cost_memory_is_not_read(text: bytes, said: str) -> None:
    with pytest.raises(RegisterError, match=said):
        loosely(text, "record.json")


def test_a_zip_that_lists_a_million_entries_is_given_up(tmp_path: Path) -> None:
    """Fourteen hundred thousand entries in 64 MB would take 900 MB as a list; here a tenth of it, of a tenth of the memory.

    In a process of its own: one that ran other tests has memory to spare that the limit does not see.
    """
    entry = struct.pack("<4s6H3I5H2I", b"PK\x01\x02", 20, 20, 0, 0, 0, 33, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0) + b"a"
    number = 140_000
    size = len(entry) * number
    end = struct.pack("<4sQHHIIQQQQ", b"PK\x06\x06", 44, 45, 45, 0, 0, number, number, size, 0)
    end += struct.pack("<4sIQI", b"PK\x06\x07", 0, size, 1)
    end += struct.pack("<4sHHHHIIH", b"PK\x05\x06", 0, 0, 65535, 65535, 2**32 - 1, 2**32 - 1, 0)
    file = tmp_path / "x.zip"
    file.write_bytes(entry * number + end)
    script = (
        "import sys; from specgen.register import aside; aside.MEMORY_LIMIT //= 10\n"
        "from specgen.commands import main; sys.exit(main(sys.argv[1:]))"
    )
    done = subprocess.run(
        [sys.executable, "-c", script, "compare", str(file), str(GOOD)], capture_output=True, text=True
    )
    assert done.returncode == 2
    assert "more memory or time than any export of ours" in done.stderr


@pytest.mark.parametrize("name", ["model.maker.json", "documents/MS-001-method-statement.pdf"])
def test_what_could_not_be_read_again_is_not_issued(desk: Desk, name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    desk.approve()
    if name.startswith("model"):
        monkeypatch.setattr(bounded_json, "VALUES_LIMIT", 100)
    else:
        monkeypatch.setattr(folder, "PDF_LIMIT", 100)
    with pytest.raises(RegisterError, match=r"is larger than|holds more than"):
        desk.issue()
    monkeypatch.undo()
    assert not desk.register.exists()
    assert desk.issue().kept.record.revision == "A"


def test_an_export_that_no_memory_holds_is_refused(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    kept = desk.revise().kept
    monkeypatch.setattr(export, "EXPORT_LIMIT", 1000)
    with pytest.raises(RegisterError, match="hand over a copy of its folder"):
        export.export(kept, Audience.MAKER, "the maker")


@pytest.mark.parametrize(
    ("name", "told"), [("record.json", "MS-001/0002: record.json or SHA256SUMS was altered"), ("SHA256SUMS", "missing")]
)
def test_the_newest_record_is_held_against_its_sums(desk: Desk, name: str, told: str) -> None:
    """No later record holds its hash: another title in it would be listed as if it had been issued."""
    desk.revise()
    path = desk.revise().kept.folder / name
    if name == "SHA256SUMS":
        path.unlink()
    else:
        path.write_bytes(path.read_bytes().replace(b'"title": "', b'"title": "Not '))
    (found,) = histories(desk.register)
    assert [fault for fault in found.faults if told in fault] == list(found.faults) != []
    assert len(list(all_faults(found))) == len(set(all_faults(found)))
