"""PDFs made to cost memory: each is judged, in plain words, by a process that stays under 500 MB."""

from __future__ import annotations

import io
import subprocess
import sys
import zlib
from pathlib import Path

import pytest
from pypdf import PdfWriter
from pypdf.generic import ArrayObject, DictionaryObject, NameObject, NumberObject, StreamObject

ROOT = Path(__file__).resolve().parents[2]
MOST = 500 * 1024
_NAMES = ("certificate.json", "model.customer.json")
_MEASURED = """
import resource, sys
from specgen.commands import main
code = main(sys.argv[1:])
own, copies = (resource.getrusage(who).ru_maxrss for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN))
print("KB", max(own, copies), "code", code)
"""
# a program counts the peak of whoever started it as its own: between the tests and what is measured stands a small one
_ASIDE = "import subprocess, sys; sys.exit(subprocess.run([sys.executable, '-c', *sys.argv[1:]]).returncode)"


def _inflating(size: int, times: int) -> bytes:
    """So many bytes of blanks, deflated so many times over."""
    packer, blanks = zlib.compressobj(1), b" " * 1024 * 1024
    data = b"".join(packer.compress(blanks) for _ in range(size // len(blanks))) + packer.flush()
    for _ in range(times - 1):
        data = zlib.compress(data, 9)
    return data


def _pdf(*attached: tuple[str, bytes, int]) -> bytes:
    """A PDF with attachments given as name, raw stream and the number of its filters."""
    writer = PdfWriter()
    writer.add_blank_page(100, 100)
    names = ArrayObject()
    for name, raw, filters in attached:
        stream = StreamObject()
        stream._data = raw
        stream[NameObject("/Filter")] = ArrayObject([NameObject("/FlateDecode")] * filters)
        stream[NameObject("/Length")] = NumberObject(len(raw))
        from pypdf.generic import TextStringObject

        held = writer._add_object(stream)
        spec = DictionaryObject(
            {
                NameObject("/Type"): NameObject("/Filespec"),
                NameObject("/F"): TextStringObject(name),
                NameObject("/UF"): TextStringObject(name),
                NameObject("/EF"): DictionaryObject({NameObject("/F"): held}),
            }
        )
        names += [TextStringObject(name), writer._add_object(spec)]
    files = DictionaryObject({NameObject("/Names"): names})
    writer.root_object[NameObject("/Names")] = DictionaryObject({NameObject("/EmbeddedFiles"): files})
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


def _hostile(case: str) -> bytes:
    if case == "sixty attachments":
        raw = _inflating(60 * 1024 * 1024, 1)
        return _pdf(*((f"x{number}.bin", raw, 1) for number in range(60)), *((name, raw, 1) for name in _NAMES))
    if case == "one name sixty times":
        raw = _inflating(30 * 1024 * 1024, 1)
        return _pdf(*((_NAMES[0], raw, 1) for _ in range(60)))
    if case == "filters on filters":
        raw = _inflating(800 * 1024 * 1024, 3)
        return _pdf(*((name, raw, 3) for name in _NAMES))
    if case == "a model of empty lists":
        raw = zlib.compress(b'{"a":[' + b"[]," * 4_000_000 + b"[]]}")
        return _pdf(*((name, raw, 1) for name in _NAMES))
    return b"%PDF-1.7\n" + b"1 0 obj << " * 200_000


@pytest.mark.parametrize(
    ("command", "case"),
    [
        (["verify"], "sixty attachments"),
        (["verify"], "one name sixty times"),
        (["verify"], "nested"),
        (["verify"], "filters on filters"),
        (["verify"], "a model of empty lists"),
        (["compare"], "filters on filters"),
    ],
)
def test_a_pdf_made_to_cost_memory_costs_little(tmp_path: Path, case: str, command: list[str]) -> None:
    file = tmp_path / "hostile.pdf"
    file.write_bytes(_hostile(case))
    more = [str(ROOT / "tests/good")] if command == ["compare"] else []
    done = subprocess.run(
        [sys.executable, "-c", _ASIDE, _MEASURED, *command, str(file), *more], cwd=ROOT, capture_output=True, text=True
    )
    assert done.returncode == 0, done.stderr
    _, size, _, code = done.stdout.splitlines()[-1].split()
    assert int(code) in (1, 2)
    assert int(size) < MOST
    assert "Traceback" not in done.stderr
    assert "internal fault" not in done.stderr
