"""What an upgrade of the source format and a change of administrative data leave as it is: approvals that wait, revisions in force."""

from __future__ import annotations

import json
import shutil
from datetime import date
from pathlib import Path

import pytest

from specgen.commands import main
from specgen.comparison.reference_snapshot import reference_snapshot
from specgen.issuing.candidate import candidate
from specgen.model.parse import load, parse
from specgen.register.approvals import Approval, approval_file, approval_text, approvals_folder, claimed_salt
from specgen.register.chain import all_faults
from specgen.register.due import due
from specgen.register.editions import digest, first_editions
from specgen.register.folder import histories, history_of
from specgen.register.frozen import frozen_sources
from specgen.register.json_text import sha256, written
from tests.good_spec import GOOD, ON
from tests.register.conftest import Desk

FORMAT_1 = GOOD.parent / "format_1" / "good"


@pytest.fixture
def old_desk(tmp_path: Path) -> Desk:
    shutil.copytree(FORMAT_1, tmp_path / "specs")
    return Desk(tmp_path / "specs")


def _approved_in_format_1(desk: Desk) -> str:
    """An approval as the program of format 1 bound it: to the maker edition as a whole, in the words of that format."""
    found = candidate(desk.folder, desk.register, "MS-001", ON)
    salt = claimed_salt(desk.folder, "MS-001", found.revision, found.salt)
    # the good project of format 1 states no version
    _, first = first_editions(found.spec, salt, found.frozen.snapshot)
    model = json.loads(first.maker)
    assert model["schema_version"] == "1"
    assert "schema_version" not in model["project"]
    assert {"hold", "role"} < set(model["systems"]["cab"]["layers"][0])
    bound = sha256(
        written({"document": "MS-001", "revision": "A", "maker": sha256(first.maker), "snapshot": dict(first.snapshot)})
    )
    assert bound == digest("MS-001", "A", first)
    approval = Approval("MS-001", "A", bound, "approve", "Ada Quill", "May be used.", "2026-11-25T09:00:00Z")
    file = approvals_folder(desk.folder, "MS-001") / approval_file("approve", "Ada Quill")
    file.write_bytes(approval_text(approval))
    return bound


def _due(desk: Desk, day: date = ON) -> list[str]:
    found = {one.document: one for one in histories(desk.register)}
    return [
        one.why
        for one in due(
            found,
            load(desk.folder).spec,
            reference_snapshot(),
            day,
            lambda record: record.snapshot.keys(),
            {},
            lambda job: {},
        )
    ]


@pytest.mark.parametrize("upgrade", [False, True], ids=["read through", "rewritten"])
def test_an_approval_given_in_format_1_holds(old_desk: Desk, upgrade: bool) -> None:
    bound = _approved_in_format_1(old_desk)
    if upgrade:
        assert main(["upgrade", str(old_desk.folder)]) == 0
    old_desk.minutes = 5
    old_desk.issue()
    (kept,) = history_of(old_desk.register, "MS-001").kept
    assert kept.record.digest == bound
    assert json.loads((kept.folder / "model.maker.json").read_text("utf-8"))["schema_version"] == "1"
    assert [fault for one in histories(old_desk.register) for fault in all_faults(one)] == []
    assert _due(old_desk) == []
    issued = parse(frozen_sources(old_desk.register, "MS-001", "A")[0])
    assert issued.findings == []
    assert issued.spec is not None


def test_a_change_of_content_voids_what_was_approved_in_format_1(old_desk: Desk) -> None:
    _approved_in_format_1(old_desk)
    assert main(["upgrade", str(old_desk.folder)]) == 0
    old_desk.change("after repair.", "after any repair.")
    with pytest.raises(Exception, match="void"):
        old_desk.issue()


def test_a_revision_issued_before_the_upgrade_is_not_due(old_desk: Desk) -> None:
    old_desk.revise()
    assert main(["upgrade", str(old_desk.folder)]) == 0
    assert _due(old_desk) == []
    old_desk.change("after repair.", "after any repair.")
    assert _due(old_desk) == ["the sources say something else now"]


ADMINISTRATIVE = {
    "a telephone number": ("+00 000 000", "+00 000 111"),
    "hours": ("Monday to Friday 8 to 16", "Monday to Friday 7 to 15"),
    "a desk": ("name: Technical desk", "name: Service desk"),
    "a holder": ("users: professional", "users: professional\n  distribution: [{id: shop, name: Body shop}]"),
    "the review period": ("users: professional", "users: professional\n  policies: {review_every: 24 months}"),
}


@pytest.mark.parametrize("what", ADMINISTRATIVE, ids=list(ADMINISTRATIVE))
def test_administrative_data_are_not_what_is_approved(desk: Desk, what: str) -> None:
    desk.approve()
    old, new = ADMINISTRATIVE[what]
    desk.change(old, new, "project.yaml")
    desk.issue()
    assert _due(desk) == []
    desk.change(new, old, "project.yaml")
    assert _due(desk) == []
    # it stands in what was printed and kept all the same
    model = (history_of(desk.register, "MS-001").kept[0].folder / "model.maker.json").read_text("utf-8")
    assert new.split(": ")[-1].strip("}]").split(",")[0] in model


def test_an_emergency_number_is_content(desk: Desk) -> None:
    desk.change("users: professional", 'users: professional\n  emergency_phone: "+00 000 999"', "project.yaml")
    desk.approve()
    desk.change("+00 000 999", "+00 000 998", "project.yaml")
    with pytest.raises(Exception, match="void"):
        desk.issue()
    desk.revise()
    desk.change("+00 000 998", "+00 000 999", "project.yaml")
    assert _due(desk) == ["the sources say something else now"]
