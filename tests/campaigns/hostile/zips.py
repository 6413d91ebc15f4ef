"""Zips that anyone may have made, as a side of a comparison and as what an export would write over. Called by `hostile_files`."""

from __future__ import annotations

import io
import struct
import zipfile
from collections.abc import Callable
from pathlib import Path

from tests.campaigns.hostile.pdfs import inflating

_ROOT = Path(__file__).resolve().parents[3]
_OURS = ("MS-1-A/certificate.json", "MS-1-A/model.customer.json", "MS-1-A/README.txt", "MS-1-A/SHA256SUMS")


def _zip(*entries: tuple[str, bytes], packing: int = zipfile.ZIP_DEFLATED, mode: int = 0o100644) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", packing) as whole:
        for name, data in entries:
            info = zipfile.ZipInfo(name)
            info.compress_type, info.external_attr = packing, mode << 16
            whole.writestr(info, data)
    return out.getvalue()


def _holding(data: bytes, packing: int = zipfile.ZIP_DEFLATED) -> bytes:
    return _zip(*((name, data) for name in _OURS), packing=packing)


def _listing(entry: bytes, number: int) -> bytes:
    """A list of entries with nothing behind it; the number is said in the 64-bit end."""
    size = len(entry) * number
    long_end = struct.pack("<4sQHHIIQQQQ", b"PK\x06\x06", 44, 45, 45, 0, 0, number, number, size, 0)
    locator = struct.pack("<4sIQI", b"PK\x06\x07", 0, size, 1)
    return (
        entry * number
        + long_end
        + locator
        + struct.pack("<4sHHHHIIH", b"PK\x05\x06", 0, 0, 65535, 65535, 2**32 - 1, 2**32 - 1, 0)
    )


def _entry(name: bytes, packed: int = 0, size: int = 0, extra: bytes = b"", flags: int = 0, method: int = 0) -> bytes:
    return (
        struct.pack(
            "<4s6H3I5H2I",
            b"PK\x01\x02",
            20,
            20,
            flags,
            method,
            0,
            33,
            0,
            packed,
            size,
            len(name),
            len(extra),
            0,
            0,
            0,
            0,
            0,
        )
        + name
        + extra
    )


def _hundred_thousand_entries() -> bytes:
    return _zip(*((f"MS-1-A/{n}", b"") for n in range(100_000)), *((name, b"{}") for name in _OURS))


def _million_entries() -> bytes:
    return _listing(_entry(b"a"), 1_400_000)


def _million_of_our_name() -> bytes:
    return _listing(_entry(b"a/certificate.json"), 900_000)


def _many_extras() -> bytes:
    return _listing(_entry(b"a", extra=b"\x01\x00\x00\x00" * 16_000), 900)


def _steps_up() -> bytes:
    return _zip(*((f"../../../{name}", b"{}") for name in _OURS), *((f"/etc/{name}", b"{}") for name in _OURS))


def _doubled_names() -> bytes:
    return _zip(*((name, b"[]" * n) for name in _OURS for n in range(1, 200)))


def _links() -> bytes:
    return _zip(*((name, b"/etc/passwd") for name in _OURS), mode=0o120777)


def _sizes_that_lie() -> bytes:
    long_sizes = struct.pack("<HHQQQ", 1, 24, 2**62, 2**62, 0)
    return _listing(_entry(b"a/certificate.json", 2**32 - 1, 2**32 - 1, long_sizes), 1)


def _list_that_lies() -> bytes:
    return b"PK\x05\x06" + struct.pack("<HHHHIIH", 0, 0, 65535, 65535, 2**32 - 2, 2**32 - 2, 0)


def _thousand_to_one() -> bytes:
    return _holding(b" " * (400 * 1024 * 1024))


def _empty_lists() -> bytes:
    return _holding(b'{"a":[' + b"[]," * 10_000_000 + b"[]]}")


def _twice_packed() -> bytes:
    return _holding(inflating(b" ", 900 * 1024 * 1024))


def _large_dictionary() -> bytes:
    """Packed by LZMA, with a window of four gigabytes asked for."""
    data = bytearray(_holding(b" " * 1024 * 1024, zipfile.ZIP_LZMA))
    at = 0
    while (at := data.find(b"\x5d\x00\x00\x80\x00", at)) >= 0:
        data[at + 1 : at + 5] = b"\xff\xff\xff\xff"
        at += 5
    return bytes(data)


def _packed_by_bzip2() -> bytes:
    return _holding(b" " * (300 * 1024 * 1024), zipfile.ZIP_BZIP2)


def _locked() -> bytes:
    return _zip(*((name, b"{}") for name in _OURS)).replace(
        b"PK\x01\x02\x14\x03\x14\x00\x00\x00", b"PK\x01\x02\x14\x03\x14\x00\x01\x00"
    )


def _long_comment() -> bytes:
    return b"\0" * (60 * 1024 * 1024) + b"PK\x05\x06" * 10_000


def _one(make: Callable[[], bytes]) -> Callable[[Path], list[list[str]]]:
    def case(place: Path) -> list[list[str]]:
        (place / "x.zip").write_bytes(make())
        over = ["register", "export", "MS-3134@C", "--out", "x.zip", "--path", str(_ROOT / "specs_demo/tramway")]
        return [["compare", "x.zip", str(_ROOT / "tests/good")], over]

    return case


CASES = {
    name.__name__.strip("_").replace("_", " "): _one(name)
    for name in (
        _hundred_thousand_entries, _million_entries, _million_of_our_name, _many_extras, _steps_up, _doubled_names, _links,
        _sizes_that_lie, _list_that_lies, _thousand_to_one, _empty_lists, _twice_packed, _large_dictionary, _packed_by_bzip2,
        _locked, _long_comment,
    )
}  # fmt: skip
