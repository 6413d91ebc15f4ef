"""Registers, receipts and approvals whose files anyone may have replaced. Called by `hostile_files`."""

from __future__ import annotations

import hashlib
import json
import shutil
from collections.abc import Callable
from pathlib import Path

_ROOT = Path(__file__).resolve().parents[3]
_LARGE = 60_000_000
_READING = (
    ["register", "list"],
    ["register", "as-of", "2026-11-01"],
    ["register", "verify"],
    ["register", "show", "MS-3134"],
)


def _lists(size: int = _LARGE) -> bytes:
    return b'{"a":[' + b"[]," * (size // 3) + b"[]]}"


def _objects(size: int = _LARGE) -> bytes:
    return b'{"a":[' + b'{"a":1},' * (size // 8) + b"{}]}"


def _wide(size: int = _LARGE) -> bytes:
    return b'{"a":"' + "𝄞".encode() + b"x" * size + b'"}'


def _record(data: Callable[[], bytes]) -> Callable[[Path], list[list[str]]]:
    def case(place: Path) -> list[list[str]]:
        (_demo(place) / "MS-3134/0002/record.json").write_bytes(data())
        return [
            *([*one, "--path", "specs"] for one in _READING),
            ["compare", "register:specs/register:MS-3134@B", "specs"],
        ]

    return case


def _demo(place: Path) -> Path:
    shutil.copytree(_ROOT / "specs_demo/range", place / "range")
    return Path(shutil.copytree(_ROOT / "specs_demo/tramway", place / "specs")) / "register"


def _record_with_files(place: Path) -> list[list[str]]:
    """A record that is well formed, of a million files."""
    path = _demo(place) / "MS-3134/0002/record.json"
    value = json.loads(path.read_text("utf-8"))
    value["files"] = {f"f{n}": {"bytes": 1, "sha256": "0" * 64} for n in range(550_000)}
    path.write_text(json.dumps(value, sort_keys=True, ensure_ascii=False, indent=None) + "\n", "utf-8")
    return [[*one, "--path", "specs"] for one in _READING]


def _swapped(name: str, data: Callable[[], bytes]) -> Callable[[Path], list[list[str]]]:
    """A file of the newest issue replaced, and its record made to agree: what only a receipt would find."""

    def case(place: Path) -> list[list[str]]:
        folder = _demo(place) / "DS-410/0001"
        raw = data()
        (folder / name).write_bytes(raw)
        hashed = hashlib.sha256(raw).hexdigest()
        value = json.loads((folder / "record.json").read_text("utf-8"))
        value["files"][name] = {"bytes": len(raw), "sha256": hashed}
        if name == "certificate.json":
            value["certificate"] = hashed
        (folder / "record.json").write_text(
            json.dumps(value, sort_keys=True, ensure_ascii=False, indent=1) + "\n", "utf-8"
        )
        return [
            ["register", "verify", "--path", "specs"],
            ["compare", "register:specs/register:DS-410@A", "specs"],
            [
                "verify",
                "specs/register/DS-410/0001/documents/DS-410-data-sheet.pdf",
                "--register",
                "specs/register",
                "--allowed-signers",
                "specs/project.yaml",
            ],
            ["register", "export", "DS-410@A", "--out", "x.zip", "--path", "specs"],
        ]

    return case


def _receipt(data: Callable[[], bytes]) -> Callable[[Path], list[list[str]]]:
    def case(place: Path) -> list[list[str]]:
        _demo(place)
        (place / "r.json").write_bytes(data())
        return [
            ["register", "verify", "--receipt", "r.json", "--path", "specs"],
            ["register", "receipt", "r.json", "--path", "specs"],
        ]

    return case


def _sums(place: Path) -> list[list[str]]:
    with (_demo(place) / "MS-3134/0002/SHA256SUMS").open("wb") as out:
        out.truncate(10 * 1024**3)
    return [["register", "verify", "--path", "specs"]]


def _many_folders(place: Path) -> list[list[str]]:
    register = _demo(place)
    for number in range(30_000):
        (register / f"X-{number}").mkdir()
    return [[*one, "--path", "specs"] for one in _READING]


def _approvals(place: Path) -> list[list[str]]:
    _demo(place)
    folder = place / "specs/approvals/DS-410"
    folder.mkdir(parents=True)
    (folder / "check-x.json").write_bytes(_lists(64_000))
    return [["approve", "DS-410", "--role", "check", "--name", "Bo Reed", "--meaning", "m", "--path", "specs"]]


CASES = {
    "record of empty lists": _record(_lists),
    "record of small objects": _record(_objects),
    "record of one wide text": _record(_wide),
    "record of a million files": _record_with_files,
    "model of empty lists": _swapped("model.maker.json", _lists),
    "model of small objects": _swapped("model.maker.json", _objects),
    "model of one wide text": _swapped("model.maker.json", _wide),
    "model of a gigabyte": _swapped("model.maker.json", lambda: b" " * (900 * 1024 * 1024)),
    "certificate of small objects": _swapped("certificate.json", _objects),
    "document of a gigabyte": _swapped("documents/DS-410-data-sheet.pdf", lambda: b" " * (900 * 1024 * 1024)),
    "receipt of empty lists": _receipt(_lists),
    "receipt of small objects": _receipt(_objects),
    "receipt of a wide text": _receipt(_wide),
    "sums of ten gigabytes": _sums,
    "many folders": _many_folders,
    "approvals": _approvals,
}
