"""The verdict on a file: with a register and without, on every way it can be altered."""

from __future__ import annotations

import io
from datetime import timedelta
from pathlib import Path

import pytest
from pypdf import PdfReader, PdfWriter

from specgen.register.failure import RegisterError
from specgen.register.issued_file import judged, verify
from specgen.register.json_text import written
from specgen.register.notes import withdraw
from specgen.register.pdf_attachments import attachments
from tests.register.conftest import BEGIN, Desk


def _pdf(desk: Desk, number: int = 1) -> Path:
    return desk.register / "MS-001" / f"{number:04d}" / "documents" / "MS-001-method-statement.pdf"


def _altered(data: bytes, *, page: bool = False, attached: dict[str, bytes] | None = None) -> bytes:
    """The file written anew by a public PDF library with another page, or other attachments."""
    writer = PdfWriter()
    for one in PdfReader(io.BytesIO(data)).pages:
        writer.add_page(one)
    if page:
        writer.add_blank_page(100, 100)
    for name, held in (attached if attached is not None else attachments(data)).items():
        writer.add_attachment(name, held)
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


def test_unaltered_and_current_then_superseded_then_withdrawn(desk: Desk) -> None:
    desk.revise()
    first = _pdf(desk)
    assert verify(first, desk.register).lines == (
        "MS-001 A of 2026-11-25, MS-001-method-statement.pdf: unaltered and current.",
    )
    desk.approve(now=BEGIN + timedelta(days=9))
    desk.issue(now=BEGIN + timedelta(days=9))
    verdict = verify(first, desk.register)
    assert (verdict.good, verdict.word) == (False, "superseded")
    assert "unaltered, but superseded by B; the next revision is of 2026-12-04. Do not work to it." in verdict.lines[0]
    withdraw(desk.register, "MS-001", "B", reason="Film too thin.", by="Ada Quill", now=BEGIN + timedelta(days=19))
    verdict = verify(_pdf(desk, 2), desk.register)
    assert (verdict.good, verdict.word) == (False, "withdrawn")
    assert "withdrawn on 2026-12-14 by Ada Quill: Film too thin. Do not work to it." in verdict.lines[0]


def test_what_was_altered_is_named(desk: Desk) -> None:
    desk.revise()
    data = _pdf(desk).read_bytes()
    from specgen.register.folder import histories

    register = histories(desk.register)
    carried = attachments(data)
    certificate, model = carried["certificate.json"], carried["model.customer.json"]
    cases = {
        "its pages": (_altered(data, page=True), "so its pages or the file around them are not"),
        "its model": (
            _altered(data, attached={**carried, "model.customer.json": model.replace(b"40 um", b"30 um")}),
            "The attached model is not the one of its certificate",
        ),
        "no model": (_altered(data, attached={"certificate.json": certificate}), "is no longer attached"),
        "its certificate": (
            _altered(
                data, attached={**carried, "certificate.json": certificate.replace(b"May be used", b"May be Used")}
            ),
            "Its certificate is not the one issued",
        ),
        "bytes at its end": (data + b"\n", "so its pages or the file around them are not"),
    }
    for name, (changed, says) in cases.items():
        verdict = judged(changed, register)
        assert (verdict.good, verdict.word) == (False, "altered"), name
        assert verdict.lines[0].startswith("MS-001 A: altered."), name
        assert says in verdict.lines[0], name
    foreign = certificate.replace(b'"document": "MS-001"', b'"document": "MS-777"')
    verdict = judged(_altered(data, attached={**carried, "certificate.json": foreign}), register)
    assert verdict.word == "unknown here"
    for stranger in (b"", b"%PDF-1.7", b"x" * 1000, _altered(data, attached={})):
        assert judged(stranger, register).word == "unknown here"
    broken = judged(_altered(data, attached={**carried, "certificate.json": b"{}"}), register)
    assert broken.word == "altered"


def test_without_a_register_there_is_no_proof_of_origin(desk: Desk) -> None:
    desk.revise()
    data = _pdf(desk).read_bytes()
    verdict = judged(data, None)
    assert (verdict.good, verdict.word) == (True, "consistent, no proof of origin")
    assert "That is no proof of origin." in verdict.lines[0]
    assert verdict.lines[-1] == "approve by Ada Quill, 2026-11-25T09:01:00Z: recorded, not signed."
    # a page added cannot be seen without the register, and the verdict does not claim that it could
    assert judged(_altered(data, page=True), None).word == "consistent, no proof of origin"
    assert "Whether its pages were altered" in verdict.lines[1]
    carried = attachments(data)
    model = carried["model.customer.json"].replace(b"40 um", b"30 um")
    assert judged(_altered(data, attached={**carried, "model.customer.json": model}), None).word == "altered"
    assert judged(b"%PDF-1.7 nothing", None).word == "no certificate"


def test_signatures_are_told_with_and_without_a_list(desk: Desk, tmp_path: Path) -> None:
    from tests.register.test_approving import _allow, _key, _sign

    key, foreign = _key(tmp_path, "ada"), _key(tmp_path, "eve")
    _allow(desk, ("ada@example.org", key))
    _sign(key, desk.approve().path)
    desk.issue()
    data = _pdf(desk).read_bytes()
    allowed = (desk.folder / "allowed_signers").read_bytes()
    assert judged(data, None, allowed).lines[-1].endswith("signed, the signature holds, by the key of ada@example.org.")
    assert "whose key that is the file cannot say" in judged(data, None).lines[-1]
    _allow(desk, ("eve@example.org", foreign))
    foreigners = (desk.folder / "allowed_signers").read_bytes()
    assert (
        judged(data, None, foreigners)
        .lines[-1]
        .endswith("its signature is by none of the signers allowed at its time.")
    )


def test_a_register_is_asked_for_signers_too(desk: Desk, tmp_path: Path) -> None:
    from tests.register.test_approving import _allow, _key, _sign

    key = _key(tmp_path, "ada")
    _allow(desk, ("ada@example.org", key))
    _sign(key, desk.approve().path)
    desk.issue()
    allowed = (desk.folder / "allowed_signers").read_bytes()
    verdict = verify(_pdf(desk), desk.register, allowed)
    assert (verdict.good, verdict.word) == (True, "unaltered and current")
    assert verdict.lines[-1].endswith("signed, the signature holds, by the key of ada@example.org.")
    others = b"eve@example.org " + _key(tmp_path, "eve").with_suffix(".pub").read_bytes()
    assert verify(_pdf(desk), desk.register, others).word == "approval does not hold"
    for list_of, word in ((allowed.replace(b"ada@", b"eve@"), "who is somebody else"), (b"", "none of the signers")):
        assert word in verify(_pdf(desk), desk.register, list_of).lines[-1]


def test_one_approval_that_does_not_hold_is_enough(desk: Desk, tmp_path: Path) -> None:
    from tests.register.test_approving import _allow, _key, _sign

    key = _key(tmp_path, "ada")
    _allow(desk, ("ada@example.org", key))
    desk.approve(role="check", name="Bo Reed")  # recorded without a signature, which holds
    _sign(key, desk.approve().path)
    desk.issue()
    data = _pdf(desk).read_bytes()
    others = b"eve@example.org " + _key(tmp_path, "eve").with_suffix(".pub").read_bytes()
    for register in (None, desk.register):
        verdict = judged(data, None, others) if register is None else verify(_pdf(desk), register, others)
        assert (verdict.good, verdict.word) == (False, "approval does not hold")
        assert "recorded, not signed" in "".join(verdict.lines)


def test_a_file_issued_unchanged_in_two_revisions_is_judged_by_the_newer(desk: Desk) -> None:
    def same(found: object, issue: object) -> dict[str, bytes]:
        return {"MS-001-materials-list.csv": b"one and the same"}

    for _ in range(3):
        desk.revise(printer=same)
    file = desk.register / "MS-001/0002/documents/MS-001-materials-list.csv"
    assert verify(file, desk.register).lines == (
        "MS-001 C of 2026-11-25, MS-001-materials-list.csv: unaltered and current.",
    )


def test_an_approval_moved_from_another_certificate_is_told(desk: Desk) -> None:
    """Without a register too: an approval names what it is bound to."""
    desk.revise()
    import json

    data = _pdf(desk).read_bytes()
    carried = attachments(data)
    value = json.loads(carried["certificate.json"])
    value["revision"] = "B"
    verdict = judged(_altered(data, attached={**carried, "certificate.json": written(value)}), None)
    assert verdict.lines[-1].endswith("bound to something else than this certificate.")
    assert not verdict.good


def test_a_damaged_register_says_so(desk: Desk) -> None:
    desk.revise()
    desk.revise()
    path = desk.register / "MS-001" / "0001" / "record.json"
    path.write_bytes(path.read_bytes().replace(b"first issue", b"First issue"))
    verdict = verify(_pdf(desk, 2), desk.register)
    assert (verdict.good, verdict.word) == (False, "register damaged")


def test_what_cannot_be_read_is_refused(desk: Desk, tmp_path: Path) -> None:
    desk.revise()
    with pytest.raises(RegisterError, match="cannot be read"):
        verify(tmp_path / "no.pdf")
    with pytest.raises(RegisterError, match="is not an ordinary file"):
        verify(tmp_path)
    with pytest.raises(RegisterError, match="there is no register here"):
        verify(_pdf(desk), tmp_path / "no")
    with pytest.raises(RegisterError, match="is a file, not the folder of a register"):
        verify(_pdf(desk), desk.folder / "job.yaml")
