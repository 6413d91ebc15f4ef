"""What is added to a file before its bytes are written, read back with a public PDF library.

The clauses themselves are judged by a validator that is not ours: `tests/campaigns/lasting_documents.py`.
"""

from __future__ import annotations

import hashlib
import io
import re
from collections.abc import Mapping
from datetime import UTC, datetime, timedelta, timezone
from typing import Any
from xml.etree import ElementTree

import pytest
from pypdf import PdfReader

from specgen.rendering.attachments import Attachment
from specgen.rendering.failure import RenderError
from specgen.rendering.pdf import write_pdf

PAGE = '<html lang="en"><head><title>T</title></head><body><h1>T</h1><p>Text.</p></body></html>'
DATED = datetime(2026, 3, 31, 9, 30, 15, tzinfo=UTC)
MODEL = Attachment(
    "model.json", b'{"film": "60 um"}\r\n\0\xff', "application/json", "Source", "What it was made from (all)"
)
READINGS = Attachment("a-readings.csv", b"", "text/csv", "Data", "Readings ≥ 60 µm")

RDF = "{http://www.w3.org/1999/02/22-rdf-syntax-ns#}"
# ISO 19005-3, clause 6.6.4, and ISO 14289-1, clause 5.
ARCHIVAL = "{http://www.aiim.org/pdfa/ns/id/}"
ACCESSIBLE = "{http://www.aiim.org/pdfua/ns/id/}"


def read(page: str = PAGE, **options: Any) -> PdfReader:
    return PdfReader(io.BytesIO(write_pdf(page, page_size="A4", **options)))


def files(reader: PdfReader) -> Mapping[str, Any]:
    """The file specifications by the names they stand under, in the order of the file."""
    names = reader.trailer["/Root"]["/Names"]["/EmbeddedFiles"]["/Names"]
    return {str(names[n]): names[n + 1].get_object() for n in range(0, len(names), 2)}


def test_the_metadata_makes_both_promises_in_one_description() -> None:
    (metadata,) = re.findall(rb"<rdf:RDF.*</rdf:RDF>", read().trailer["/Root"]["/Metadata"].get_data(), flags=re.DOTALL)
    tree = ElementTree.fromstring(metadata)
    promises = {
        name: value for one in tree for name, value in one.attrib.items() if name.startswith((ARCHIVAL, ACCESSIBLE))
    }
    assert promises == {f"{ARCHIVAL}part": "3", f"{ARCHIVAL}conformance": "A"}
    assert [one.text for one in tree.iter(f"{ACCESSIBLE}part")] == ["1"]
    schema = "{http://www.aiim.org/pdfa/ns/schema#}"
    assert [one.text for one in tree.iter(f"{schema}namespaceURI")] == [ACCESSIBLE.strip("{}")]


def test_attachments_are_read_back_as_they_were_given() -> None:
    reader = read(attachments=[MODEL, READINGS], dated=DATED)
    held = files(reader)
    assert list(held) == ["a-readings.csv", "model.json"]
    for given in (MODEL, READINGS):
        specification = held[given.name]
        stream = specification["/EF"]["/F"].get_object()
        assert specification["/EF"]["/UF"].get_object() is stream
        assert (specification["/F"], specification["/UF"], specification["/Desc"]) == (
            given.name,
            given.name,
            given.description,
        )
        assert specification["/AFRelationship"] == f"/{given.relationship}"
        assert (stream.get_data(), stream["/Subtype"]) == (given.data, f"/{given.media_type}")
        parameters = stream["/Params"]
        assert parameters["/Size"] == len(given.data)
        assert (parameters["/CreationDate"], parameters["/ModDate"]) == ("D:20260331093015Z", "D:20260331093015Z")
        digest = parameters["/CheckSum"].original_bytes
        assert digest == hashlib.md5(given.data, usedforsecurity=False).digest()
    associated = reader.trailer["/Root"]["/AF"]
    assert [one.get_object()["/F"] for one in associated] == ["a-readings.csv", "model.json"]  # each once
    assert reader.attachments == {"a-readings.csv": [b""], "model.json": [MODEL.data]}


def test_a_page_without_attachments_associates_nothing() -> None:
    root = read().trailer["/Root"]
    assert ("/AF" in root, "/Names" in root) == (False, False)


def test_links_and_attachments_share_the_table_of_names() -> None:
    page = PAGE.replace("<p>", '<p id="here"><a href="#here">to it</a> ')
    names = read(page, attachments=[MODEL]).trailer["/Root"]["/Names"]
    assert sorted(names) == ["/Dests", "/EmbeddedFiles"]


def test_the_only_date_is_the_one_given() -> None:
    reader = read(attachments=[MODEL])
    assert reader.metadata is not None
    assert (reader.metadata.creation_date, reader.metadata.modification_date) == (None, None)
    assert files(reader)["model.json"]["/EF"]["/F"]["/Params"]["/ModDate"] == "D:20000101000000Z"
    for moment in (DATED, DATED.astimezone(timezone(timedelta(hours=-3, minutes=-30)))):
        reader = read(dated=moment)
        assert reader.metadata is not None
        assert (reader.metadata.creation_date, reader.metadata.modification_date) == (DATED, DATED)
        xmp = reader.trailer["/Root"]["/Metadata"].get_data().decode()
        assert xmp.count("2026-03-31T09:30:15Z") == 2


REFUSED = {
    "time zone": ({"dated": DATED.replace(tzinfo=None)}, "The time 2026-03-31T09:30:15 of the document names no time zone"),
    "one name": ({"attachments": [MODEL, READINGS, MODEL]}, "2 attachments are named 'model.json'"),
    **{
        f"media type {kind!r}": (
            {"attachments": [Attachment("a.txt", b"", kind, "Data", "")]}, f"The media type {kind!r} is none"
        )
        for kind in ("", "text", "text/plain; charset=utf-8", "text/a/b", "text/(")
    },
    **{
        f"name {name!r}": (
            {"attachments": [Attachment(name, b"", "text/plain", "Data", "")]},
            f"The attachment name {name!r} is not a plain file name",
        )
        for name in ("", ".hidden", "../up", "a/b", "a\\b", "C:a", "mű.txt", "a b", "a\n")
    },
}  # fmt: skip


@pytest.mark.parametrize("case", REFUSED)
def test_what_cannot_be_put_into_a_file(case: str) -> None:
    options, message = REFUSED[case]
    with pytest.raises(RenderError) as refusal:
        write_pdf(PAGE, page_size="A4", **options)
    assert message in str(refusal.value)
