"""A language is whole: its catalogue holds every text in words of its own, compiled as it stands, and is one a project may name.

The languages shipped are held to it, and a made-up one shows that each thing forgotten is told.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from babel.messages.catalog import Catalog

from specgen.model.project import Language
from specgen.rendering.assets import templates_folder
from specgen.rendering.environment import environment, translation
from specgen.rendering.failure import RenderError
from tests.languages import LANGUAGE, faults, made_up, write, write_made_up

SHIPPED = templates_folder() / "locale"
FILE = Path(LANGUAGE, "LC_MESSAGES/specgen.mo")
SAID = "Page %(page)s of %(pages)s"


def test_languages_shipped_are_whole() -> None:
    told = faults(SHIPPED)
    assert not told, "\n".join(told)


def test_languages_a_project_may_name_are_those_shipped() -> None:
    named = {language.value for language in Language}
    folders = {"en"} | {path.name for path in SHIPPED.iterdir() if path.is_dir()}
    told = [
        f"{code} has a folder in templates/locale and no line in Language of model/project.py"
        for code in folders - named
    ]
    told += [
        f"{code} is a line in Language of model/project.py without a folder in templates/locale"
        for code in named - folders
    ]
    assert not told, "\n".join(sorted(told))


def test_a_whole_language_has_no_fault(tmp_path: Path) -> None:
    write_made_up(tmp_path)
    assert faults(tmp_path) == []
    assert made_up("<b>Page</b> %(page)s of {n}&nbsp;m") == "<b>Ｐａｇｅ</b> %(page)s ｏｆ {n}&nbsp;ｍ"


def _left_out(words: Catalog) -> None:
    words.delete(SAID)


def _not_said(words: Catalog) -> None:
    words.get(SAID).string = ""  # type: ignore[union-attr]  # it is there: it is one of ours


def _not_sure(words: Catalog) -> None:
    words.get(SAID).flags.add("fuzzy")  # type: ignore[union-attr]


def _other_fields(words: Catalog) -> None:
    words.get(SAID).string = "%(page)s / %(total)s"  # type: ignore[union-attr]


def _one_more(words: Catalog) -> None:
    words.add("Never said", "Ｎｅｖｅｒ")


@pytest.mark.parametrize(
    ("change", "told"),
    [
        (_left_out, f"specgen.po lacks {SAID!r}"),
        (_not_said, f"specgen.po has no words for {SAID!r}"),
        (_not_sure, f"specgen.po is not sure of {SAID!r}: it is marked fuzzy"),
        (_other_fields, f"specgen.po has other fields in its words for {SAID!r}"),
        (_one_more, "specgen.po holds 'Never said', which no document says any more"),
    ],
)
def test_words_that_are_not_whole_are_named(change: Callable[[Catalog], None], told: str, tmp_path: Path) -> None:
    words = write_made_up(tmp_path)
    change(words)
    write(tmp_path, words, compiled=words)
    assert faults(tmp_path) == [f"{LANGUAGE}: {told}"]


def test_a_compiled_catalogue_that_is_missing_stale_or_damaged_is_told(tmp_path: Path) -> None:
    words = write_made_up(tmp_path)
    words.get(SAID).string = "%(page)s / %(pages)s"  # type: ignore[union-attr]
    write(tmp_path, words, compiled=None)
    differs = f"{LANGUAGE}: LC_MESSAGES/specgen.mo says something else than specgen.po, or is damaged; compile specgen.po again"
    assert faults(tmp_path) == [differs]
    (tmp_path / FILE).write_bytes((tmp_path / FILE).read_bytes()[:-40])
    assert faults(tmp_path) == [differs]
    (tmp_path / FILE).unlink()
    assert faults(tmp_path) == [f"{LANGUAGE}: LC_MESSAGES/specgen.mo is missing; compile specgen.po"]
    (tmp_path / FILE).with_suffix(".po").unlink()
    assert faults(tmp_path) == [f"{LANGUAGE}: LC_MESSAGES/specgen.po is missing; make it from specgen.pot"]
    (tmp_path / LANGUAGE).rename(tmp_path / "zz")
    assert faults(tmp_path) == ["zz: no language of this code is known, so nobody can tell how it writes numbers"]


def test_a_damaged_catalogue_is_refused_in_a_sentence(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Cut off anywhere, or with another byte where it counts, it is one message to the user and no trace of a program."""
    small = Catalog(locale=LANGUAGE, project="specgen")
    small.add(SAID, made_up(SAID))
    write(tmp_path, small, compiled=small)
    whole = (tmp_path / FILE).read_bytes()
    monkeypatch.setattr("specgen.rendering.environment.asset", lambda name: tmp_path / FILE)
    cuts = [whole[:length] for length in range(len(whole))]
    plural = whole.index(b"plural=")
    other = [
        b"\0" * len(whole),
        b"no catalogue",
        whole.replace(b"charset=utf-8", b"charset=utf-0"),
        whole.replace("Ｐ".encode(), b"\xff\xfe\xfd"),
        whole[: plural + 7] + b"(((" + whole[plural + 10 :],
    ]
    for damaged in (*cuts, *other):
        (tmp_path / FILE).write_bytes(damaged)
        for asked in (translation.__wrapped__, environment.__wrapped__):
            with pytest.raises(
                RenderError, match=r"^The catalogue of messages for the language 'de' cannot be read: .* is damaged"
            ):
                asked(LANGUAGE)
