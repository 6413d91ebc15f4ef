"""A certificate is read as strictly as issuing writes it."""

from __future__ import annotations

import json
from typing import Any

import pytest

from specgen.register.certificate import read_certificate
from specgen.register.failure import RegisterError
from specgen.register.json_text import written
from tests.register.conftest import Desk


@pytest.mark.parametrize(
    ("field", "value"),
    [("revision", 1), ("issued", None), ("approvals", {}), ("approvals", "none"), ("approvals", [1])],
)
def test_a_value_of_another_type_is_refused(desk: Desk, field: str, value: Any) -> None:
    held = (desk.revise().kept.folder / "certificate.json").read_bytes()
    assert read_certificate(held).revision == "A"
    with pytest.raises(RegisterError, match="the certificate holds"):
        read_certificate(written(json.loads(held) | {field: value}))
