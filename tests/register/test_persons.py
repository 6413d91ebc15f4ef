"""One person under the spellings a name comes in, and the principal of a key that names the person."""

from __future__ import annotations

import pytest

from specgen.register.persons import names_person, person

TITLES = "Dr Mr Mrs Ms Miss Mx Prof Professor Ing Dipl Eng MSc BSc PhD Sr Jr"


@pytest.mark.parametrize("title", TITLES.split())
def test_a_title_makes_no_other_person(title: str) -> None:
    assert person(f"{title}. Ada Quill") == person(f"Ada Quill {title}") == person("Ada Quill")
    assert person(title) != ""


@pytest.mark.parametrize(
    ("principal", "names"),
    [
        ("ada.quill@example.org", True),
        ("Ada Quill", True),
        ("quill@example.org", True),
        ("aquill@example.org", True),
        ("qada@example.org", True),
        ("qquill@example.org", False),
        ("bquill@example.org", False),
        ("ada.moss@example.org", False),
        ("@example.org", False),
    ],
)
def test_a_key_names_its_person(principal: str, names: bool) -> None:
    assert names_person(principal, "Ada Quill") is names
