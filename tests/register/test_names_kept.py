"""No name of a listed person enters the register in the bytes of the readings, wherever in a file it stands."""

from __future__ import annotations

import io
from pathlib import Path

import openpyxl
import pytest
from pypdf import PdfWriter

from specgen.issuing.names_kept import names_kept
from specgen.register.people import People, people_of

LISTED = (
    "people:\n  - {id: ka, name: K. Aldermoor}\n  - {id: rw, name: Rémy White}\n  - {id: em}\n"
    '  - {id: long, name: "Dr Ines van der Brook"}\n'
)


@pytest.fixture
def people(tmp_path: Path) -> People:
    (tmp_path / "people.yaml").write_text(LISTED, encoding="utf-8")
    return people_of(tmp_path)


def _workbook(author: str, cell: str) -> bytes:
    book = openpyxl.Workbook()
    book.properties.creator = author
    assert book.active is not None
    book.active["A1"] = cell
    held = io.BytesIO()
    book.save(held)
    return held.getvalue()


def _pdf(author: str) -> bytes:
    writer = PdfWriter()
    writer.add_blank_page(100, 100)
    writer.add_metadata({"/Author": author})
    held = io.BytesIO()
    writer.write(held)
    return held.getvalue()


@pytest.mark.parametrize(
    ("name", "data", "told"),
    [
        ("a.csv", b"item,remark\nDOOR,seen with K. Aldermoor\n", "readings/a.csv:2 names K. Aldermoor; write the id, ka"),
        ("a.csv", b"Operator;ALDERMOOR K\nitem;value\nDOOR;56\n", "readings/a.csv:1 names"),
        ("a.csv", "item,remark\nDOOR,Remy White\n".encode("utf-16"), "readings/a.csv:2 names"),
        ("a.csv", b"item,remark\nDOOR,by I. van der Brook\nDOOR,by Ines van der Brook\n", "readings/a.csv:3 names"),
        ("a-k_aldermoor.csv", b"item,value\nDOOR,56\n", "readings/a-k_aldermoor.csv names"),
        ("a.xlsx", _workbook("K. Aldermoor", "x"), "readings/a.xlsx (docProps/core.xml) names"),
        ("a.xlsx", _workbook("x", "K. Aldermoor"), "readings/a.xlsx (xl/"),
        ("a.pdf", _pdf("K. Aldermoor"), "readings/a.pdf (properties) names"),
        # an id, a word that is part of a name, and a name in two places are no name
        ("a.csv", b"item,remark,by\nDOOR,white spots,ka\nDOOR,K is the gauge,ka\nAldermoor Road\n", ""),
        ("a.xlsx", _workbook("ka", "white"), ""),
        ("a.pdf", _pdf("em"), ""),
        ("a.csv", b"\x00\x01\x02", ""),
        ("a.xlsx", b"PK\x03\x04 no zip", ""),
        ("a.pdf", b"%PDF-1.7 nothing", ""),
    ],
)  # fmt: skip
def test_a_listed_name_is_found_wherever_it_stands(people: People, name: str, data: bytes, told: str) -> None:
    said = list(names_kept({f"readings/{name}": data}, people))
    assert len(said) == (1 if told else 0)
    assert all(line.startswith(told) for line in said)


def test_whoever_is_erased_is_not_looked_for(tmp_path: Path) -> None:
    (tmp_path / "people.yaml").write_text("people: [{id: ka}]\n")
    assert list(names_kept({"readings/a.csv": b"K. Aldermoor"}, people_of(tmp_path))) == []
