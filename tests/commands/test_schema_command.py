"""`specgen schema` prints what `specgen.model.schema` builds."""

from __future__ import annotations

import json

import pytest

from specgen.commands import main
from specgen.model.schema import schema
from specgen.model.spec import SINGULAR
from specgen.report import change_json


@pytest.mark.parametrize("kind", SINGULAR)
def test_schema(kind: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["schema", kind]) == 0
    assert json.loads(capsys.readouterr().out) == schema(kind)


def test_schema_of_a_comparison(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["schema", "comparison"]) == 0
    assert json.loads(capsys.readouterr().out) == change_json.schema()


def test_unknown_kind(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["schema", "products"]) == 2
    assert capsys.readouterr().err == (
        "specgen: KIND: invalid choice: 'products' (choose from 'project', 'safety-set', 'product', 'preparation', 'system',"
        " 'contract-document', 'job', 'concession', 'offer', 'report', 'comparison');"
        " see `specgen schema --help`\n"
    )
