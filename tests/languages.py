"""What a language below a locale folder has to be, and one made up for the tests: every letter of ours in another alphabet.

A made-up word is told from an English one wherever it is printed, also inside a sentence that is filled in. Called by the tests of
catalogues and by those of documents in another language.
"""

from __future__ import annotations

import re
import struct
from collections.abc import Iterator
from pathlib import Path

from babel.core import Locale, UnknownLocaleError
from babel.messages.catalog import Catalog, Message
from babel.messages.mofile import read_mo, write_mo
from babel.messages.pofile import read_po, write_po

from specgen.rendering.assets import templates_folder

MESSAGES = templates_folder() / "locale/specgen.pot"
LANGUAGE = "de"
"""The code the made-up language goes by: one whose decimal sign is a comma and whose plurals are two."""

_FIELD = re.compile(r"%\(\w+\)[a-z]|\{[^{}]*\}")
_KEPT = re.compile(rf"({_FIELD.pattern}|</?[a-z][^<>]*>|&#?\w+;)")
_LETTERS = {code: code + 0xFEE0 for code in (*range(ord("A"), ord("Z") + 1), *range(ord("a"), ord("z") + 1))}


def made_up(text: str) -> str:
    """`Page {n}` as `Ｐａｇｅ {n}`: letters that are wide, fields and tags as they stand."""
    return "".join(part if at % 2 else part.translate(_LETTERS) for at, part in enumerate(_KEPT.split(text)))


def write_made_up(locale: Path) -> Catalog:
    """The made-up language below a locale folder, as the recipe asks for it: what is to be said, its words, and these compiled."""
    with MESSAGES.open("rb") as file:
        whole = read_po(file, locale=LANGUAGE)
    whole.fuzzy = False
    for message in whole:
        if message.id:
            message.string = tuple(map(made_up, message.id)) if message.pluralizable else made_up(message.id)
    write(locale, whole, compiled=whole)
    return whole


def write(locale: Path, words: Catalog, *, compiled: Catalog | None) -> None:
    """`specgen.po` of the made-up language, and `specgen.mo` unless it is None."""
    folder = locale / LANGUAGE / "LC_MESSAGES"
    folder.mkdir(parents=True, exist_ok=True)
    with (folder / "specgen.po").open("wb") as file:
        write_po(file, words)
    if compiled is not None:
        with (folder / "specgen.mo").open("wb") as file:
            write_mo(file, compiled)


def faults(locale: Path) -> list[str]:
    """What is wrong with the languages below a locale folder, each in a sentence."""
    return [
        f"{folder.name}: {said}" for folder in sorted(locale.iterdir()) if folder.is_dir() for said in _faults(folder)
    ]


def _faults(folder: Path) -> Iterator[str]:
    try:
        Locale.parse(folder.name, sep="-")
    except (UnknownLocaleError, ValueError):
        yield "no language of this code is known, so nobody can tell how it writes numbers"
        return
    source, compiled = (folder / "LC_MESSAGES" / f"specgen.{ending}" for ending in ("po", "mo"))
    if not source.is_file():
        yield "LC_MESSAGES/specgen.po is missing; make it from specgen.pot"
        return
    with source.open("rb") as file:
        words = read_po(file, locale=folder.name.replace("-", "_"))
    with MESSAGES.open("rb") as file:
        wanted = {message.id for message in read_po(file) if message.id}
    held = {message.id: message for message in words if message.id}
    yield from (f"specgen.po lacks {_said(one)}" for one in wanted - set(held))
    yield from (f"specgen.po holds {_said(one)}, which no document says any more" for one in set(held) - wanted)
    for message in held.values():
        yield from _faults_of(message)
    if not compiled.is_file():
        yield "LC_MESSAGES/specgen.mo is missing; compile specgen.po"
    elif _strings(compiled) != {
        _forms(one.id): _forms(one.string) for one in held.values() if _is_said(one) and not one.fuzzy
    }:
        yield "LC_MESSAGES/specgen.mo says something else than specgen.po, or is damaged; compile specgen.po again"


def _faults_of(message: Message) -> Iterator[str]:
    if not _is_said(message):
        yield f"specgen.po has no words for {_said(message.id)}"
        return
    if message.fuzzy:
        yield f"specgen.po is not sure of {_said(message.id)}: it is marked fuzzy"
    asked, given = ([set(_FIELD.findall(form)) for form in _forms(texts)] for texts in (message.id, message.string))
    # Of the forms for one and for many, one may leave the number out.
    if set().union(*given) != set().union(*asked):
        yield f"specgen.po has other fields in its words for {_said(message.id)}"


def _strings(compiled: Path) -> dict[tuple[str, ...], tuple[str, ...]] | None:
    """What a compiled catalogue says, by what it says it for; None for one that cannot be read."""
    try:
        with compiled.open("rb") as file:
            return {_forms(message.id): _forms(message.string) for message in read_mo(file) if message.id}
    except (OSError, ValueError, LookupError, struct.error):
        return None


def _is_said(message: Message) -> bool:
    return all(_forms(message.string))


def _forms(texts: object) -> tuple[str, ...]:
    return (texts,) if isinstance(texts, str) else tuple(texts) if isinstance(texts, tuple | list) else ()


def _said(message_id: object) -> str:
    return repr(_forms(message_id)[0])
