"""PDFs that anyone may have made: what they carry, how they are laid out, how they are packed. Called by `hostile_files`."""

from __future__ import annotations

import io
import zlib
from collections.abc import Callable
from pathlib import Path

from pypdf import PdfWriter

_NAMES = ("certificate.json", "model.customer.json")
_ROOT = Path(__file__).resolve().parents[3]


def inflating(pattern: bytes, size: int) -> bytes:
    """So many bytes of a pattern, deflated."""
    packer, piece = zlib.compressobj(6), pattern * (1024 * 1024 // len(pattern))
    return b"".join(packer.compress(piece) for _ in range(size // len(piece))) + packer.flush()


def _laid_out(objects: dict[int, bytes], trailer: bytes = b"") -> bytes:
    """A PDF of the objects by number, 1 being the catalogue, with a table that holds."""
    out, at = bytearray(b"%PDF-1.7\n"), {}
    for number, body in objects.items():
        at[number] = len(out)
        out += b"%d 0 obj\n%s\nendobj\n" % (number, body)
    start, most = len(out), max(objects) + 1
    out += b"xref\n0 %d\n" % most
    for number in range(most):
        out += b"%010d %05d %s \n" % (at.get(number, 0), 0 if number in at else 65535, b"n" if number in at else b"f")
    return bytes(out + b"trailer\n<< /Size %d /Root 1 0 R %s >>\nstartxref\n%d\n%%%%EOF\n" % (most, trailer, start))


def _stream(data: bytes, about: bytes = b"/Filter /FlateDecode") -> bytes:
    return b"<< /Length %d %s >>\nstream\n%s\nendstream" % (len(data), about, data)


def _carrying(names: list[bytes], raw: bytes, about: bytes = b"/Filter /FlateDecode") -> bytes:
    """A PDF whose attachments of those names are one stream."""
    listed = b" ".join(b"(%s) << /Type /Filespec /F (%s) /UF (%s) /EF << /F 3 0 R >> >>" % (n, n, n) for n in names)
    return _laid_out(
        {1: b"<< /Type /Catalog /Pages 2 0 R /Names << /EmbeddedFiles << /Names [%s] >> >> >>" % listed,
         2: b"<< /Type /Pages /Kids [] /Count 0 >>", 3: _stream(raw, about)}
    )  # fmt: skip


def _ours() -> list[bytes]:
    return [name.encode() for name in _NAMES]


def _many_small() -> bytes:
    return _carrying([b"x%d.bin" % n for n in range(5000)] + _ours(), zlib.compress(b"{}"))


def _many_of_one_name() -> bytes:
    return _carrying([_ours()[0]] * 5000 + _ours(), inflating(b" ", 1024 * 1024))


def _empty_lists() -> bytes:
    return _carrying(_ours(), zlib.compress(b'{"a":[' + b"[]," * 10_000_000 + b"[]]}"))


def _small_objects() -> bytes:
    return _carrying(_ours(), zlib.compress(b'{"a":[' + b'{"a":1},' * 3_900_000 + b"{}]}"))


def _one_wide_sign() -> bytes:
    return _carrying(_ours(), zlib.compress(b'{"a":"' + "𝄞".encode() + b"x" * 31_000_000 + b'"}'))


def _many_numbers() -> bytes:
    return _carrying(_ours(), zlib.compress(b'{"a":[' + b"1.5," * 7_000_000 + b"1]}"))


def _long_number() -> bytes:
    return _carrying(_ours(), zlib.compress(b'{"a":' + b"9" * 20_000_000 + b"}"))


def _deep_text() -> bytes:
    return _carrying(_ours(), zlib.compress(b'{"a":' + b"[" * 10_000_000))


def _pages_in_a_ring() -> bytes:
    return _laid_out({1: b"<< /Type /Catalog /Pages 2 0 R >>", 2: b"<< /Type /Pages /Kids [2 0 R 2 0 R] /Count 9 >>"})


def _names_in_a_ring() -> bytes:
    return _laid_out({
        1: b"<< /Type /Catalog /Pages 2 0 R /Names << /EmbeddedFiles 3 0 R >> >>",
        2: b"<< /Type /Pages /Kids [] /Count 0 >>", 3: b"<< /Kids [4 0 R 4 0 R] >>", 4: b"<< /Kids [3 0 R 3 0 R] >>",
    })  # fmt: skip


def _names_that_double() -> bytes:
    """Each of forty nodes names the next one twice: a million million leaves."""
    nodes = {n: b"<< /Kids [%d 0 R %d 0 R] >>" % (n + 1, n + 1) for n in range(3, 43)}
    leaf = b"<< /Names [(certificate.json) << /F (certificate.json) /EF << /F 44 0 R >> >>] >>"
    return _laid_out(
        {1: b"<< /Type /Catalog /Pages 2 0 R /Names << /EmbeddedFiles 3 0 R >> >>",
         2: b"<< /Type /Pages /Kids [] /Count 0 >>", **nodes, 43: leaf, 44: _stream(zlib.compress(b"{}"))}
    )  # fmt: skip


def _object_streams() -> bytes:
    """Sixty object streams of 60 MB, the catalogue in the last."""
    raw = inflating(b"1 ", 60 * 1024 * 1024)
    held = {n: _stream(raw, b"/Type /ObjStm /N 1000000 /First 8000000 /Filter /FlateDecode") for n in range(3, 63)}
    return _laid_out({1: b"<< /Type /Catalog /Pages 3 0 R /Names 4 0 R >>", **held})


def _table_in_a_ring() -> bytes:
    whole = _laid_out({1: b"<< /Type /Catalog /Pages 2 0 R >>", 2: b"<< /Type /Pages /Kids [] /Count 0 >>"})
    start = whole.rindex(b"xref\n", 0, whole.rindex(b"startxref"))
    return whole.replace(b"/Root 1 0 R", b"/Root 1 0 R /Prev %d" % start)


def _table_that_lies() -> bytes:
    return b"%PDF-1.7\nxref\n0 1000000000\n" + b"0000000000 65535 f \n" * 3_000_000 + b"startxref\n9\n%%EOF\n"


def _packed_table_that_lies() -> bytes:
    body = _stream(inflating(b"\x01\x00\x00\x00\x10\x00", 30 * 1024 * 1024),
                   b"/Type /XRef /Size 2147483647 /W [1 4 1] /Root 1 0 R /Filter /FlateDecode")  # fmt: skip
    return b"%PDF-1.7\n5 0 obj\n" + body + b"\nendobj\nstartxref\n9\n%%EOF\n"


def _predicted() -> bytes:
    about = b"/Filter /FlateDecode /DecodeParms << /Predictor 15 /Columns 1 /Colors 1 >>"
    return _carrying(_ours(), inflating(b"\x02", 30 * 1024 * 1024), about)


def _hexadecimal() -> bytes:
    return _carrying(_ours(), b"20" * 15_000_000 + b">", b"/Filter /ASCIIHexDecode")


def _other_packings() -> bytes:
    return _carrying(_ours(), b"\x81 " * 15_000_000 + b"\x80", b"/Filter /RunLengthDecode")


def _dense() -> bytes:
    """LZW of nothing but clearing and long runs."""
    return _carrying(_ours(), bytes(range(256)) * 60_000, b"/Filter /LZWDecode")


def _nested_arrays() -> bytes:
    return b"%PDF-1.7\n1 0 obj\n" + b"[" * 30_000_000 + b"\nendobj\ntrailer << /Root 1 0 R >>\nstartxref\n0\n%%EOF\n"


def _large_dictionary() -> bytes:
    held = b"".join(b"/K%d %d " % (n, n) for n in range(1_500_000))
    return _laid_out({1: b"<< /Type /Catalog %s >>" % held})


def _comments() -> bytes:
    return b"%PDF-1.7\n" + b"1 0 obj\n" * 7_000_000


def _locked() -> bytes:
    writer = PdfWriter()
    writer.add_blank_page(100, 100)
    for name in _NAMES:
        writer.add_attachment(name, b"{}")
    writer.encrypt("unknown", algorithm="RC4-128")
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


def _one(make: Callable[[], bytes]) -> Callable[[Path], list[list[str]]]:
    def case(place: Path) -> list[list[str]]:
        (place / "x.pdf").write_bytes(make())
        return [["verify", "x.pdf"], ["compare", "x.pdf", str(_ROOT / "tests/good")]]

    return case


CASES = {
    name.__name__.strip("_").replace("_", " "): _one(name)
    for name in (
        _many_small, _many_of_one_name, _empty_lists, _small_objects, _one_wide_sign, _many_numbers, _long_number, _deep_text,
        _pages_in_a_ring, _names_in_a_ring, _names_that_double, _object_streams, _table_in_a_ring, _table_that_lies,
        _packed_table_that_lies, _predicted, _hexadecimal, _other_packings, _dense, _nested_arrays, _large_dictionary, _comments,
        _locked,
    )
}  # fmt: skip
