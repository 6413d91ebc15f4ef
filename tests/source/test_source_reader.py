"""What the reader makes of sound files, of files too large to keep, and of anything at all."""

from __future__ import annotations

import time
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specgen.findings import Finding
from specgen.source import Mapping, Mark, Node, Scalar, Sequence, SourceFile, read_file, read_text

MIB = 1024 * 1024


def ids(findings: list[Finding]) -> list[str]:
    return [f"{f.id} at {f.place.line}:{f.place.column}" for f in findings]


def plain(node: Node | None) -> object:
    """The text of a tree as dicts, lists and strings."""
    if isinstance(node, Mapping):
        return {key: plain(value) for key, value in node.entries.items()}
    if isinstance(node, Sequence):
        return [plain(item) for item in node.items]
    return node.text if node is not None else None


def test_every_value_stays_text_with_its_place() -> None:
    raw = 'time: 1:30\ndone: no\nunit: "µm"\nlist:\n  - 0123\n  - {a: 1e3}\nempty:\nlong: |\n  one\n  two\n'.encode()
    source, findings = read_text(raw, "a.yaml")
    assert findings == []
    assert plain(source.root) == {
        "time": "1:30",
        "done": "no",
        "unit": "µm",
        "list": ["0123", {"a": "1e3"}],
        "empty": "",
        "long": "one\ntwo\n",
    }
    assert isinstance(source.root, Mapping)
    assert source.root.mark == Mark(1, 1, 11)
    assert source.root.keys["unit"] == Mark(3, 1, 5)
    assert source.root.entries["time"] == Scalar("1:30", Mark(1, 7, 11), True)
    assert source.root.entries["unit"] == Scalar("µm", Mark(3, 7, 11), False)
    assert source.root.entries["empty"] == Scalar("", Mark(7, 7, 7), True)
    assert source.root.entries["long"] == Scalar("one\ntwo\n", Mark(8, 7, 8), False)
    assert source.lines[3] == "list:"


def test_line_ends_and_the_mark_in_front_do_not_move_anything() -> None:
    for raw in (b"a: 1\nb: ~\n", b"a: 1\r\nb: ~\r\n", b"a: 1\rb: ~", b"\xef\xbb\xbfa: 1\nb: ~"):
        source, findings = read_text(raw, "a.yaml")
        assert source.lines == ("a: 1", "b: ~")
        assert ids(findings) == ["SRC019 at 2:4"]


@pytest.mark.parametrize(
    "text",
    [
        "---\na: 1\n",
        "# remark\n--- # begins\na: 1\n",
        "a: one {{ x }} two\n",
        'a: "{{ x }}"\n',
        "a: 'it''s'\n",
        "a: b#c # d\n",
        "a: http://example.org:80/x\n",
        "a:\n- b\n- c\n",
        "a: [1, {b: 2}]\n",
        "a: >\n  text: with colon\n  # and hash\n",
        'a: "x\ty"\n',
        "a: -5 degC\nb: 5*3\nc: a & b\n",
        "µ: °\n",
    ],
)
def test_what_is_sound_is_left_alone(text: str) -> None:
    source, findings = read_text(text.encode(), "a.yaml")
    assert findings == []
    assert isinstance(source.root, Mapping)


def test_tabs_in_quotes_are_kept() -> None:
    source, findings = read_text(b'a: "x\ty"\nb:\tz\n', "a.yaml")
    assert ids(findings) == ["SRC007 at 2:3"]
    assert plain(source.root) == {"a": "x\ty", "b": "z"}


def test_a_finding_carries_its_line_and_names_both_lines_of_a_key() -> None:
    _, (finding,) = read_text(b"dft: 60 um\n\ndft: 80 um\n", "a/b.yaml")
    assert str(finding.place) == "a/b.yaml:3:1"
    assert finding.place.text == "dft: 80 um"
    assert finding.what == "`dft` is in line 1 and again in line 3."


def test_what_is_shown_can_never_steer_a_screen() -> None:
    source, findings = read_text(b'a: \x1b[31mred\n\'\x1bb\': 1\n"\\e": 1\n"\\e": 2\n', "a.yaml")
    assert ids(findings) == ["SRC005 at 1:4", "SRC005 at 2:2", "SRC005 at 3:1", "SRC005 at 4:1", "SRC017 at 4:1"]
    shown = [*source.lines, *(f.what + f.place.text for f in findings)]
    assert [text for text in shown if "\x1b" in text] == []


def test_more_than_a_mebibyte_is_not_parsed() -> None:
    source, findings = read_text(b"a: 1\n" * (2 * MIB), "a.yaml")
    assert ids(findings) == [f"SRC001 at {MIB // 5 + 1}:1"]
    assert source.root is None


def test_deep_brackets_end_at_once() -> None:
    assert ids(read_text(b"a: " + b"[" * 30 + b"]" * 30, "a.yaml")[1]) == ["SRC020 at 1:23"]
    assert ids(read_text(b"a: " + b"[" * (MIB - 10), "a.yaml")[1]) == ["SRC008 at 1:2001"]


@pytest.mark.parametrize(
    ("line", "told"),
    [
        # within the limit of a line: as many faults as a file lists, and no more time than the file takes to read
        ("a{n}: b  #c" + " " * 1_980 + "x\n", "SRC023"),
        ("a{n}: {{" + "? b: c, " * 240 + "}}\n", "SRC018"),
        # a line beyond it is not looked along at all
        ("a{n}: b  #c" + " " * 19_000 + "x\n", "SRC008"),
        ("a{n}: {{" + "? b: c, " * 2_400 + "}}\n", "SRC008"),
    ],
)
def test_long_lines_end_soon(line: str, told: str) -> None:
    raw = "".join(line.format(n=n) for n in range(50)).encode()
    begun = time.process_time()
    _, findings = read_text(raw, "a.yaml")
    assert time.process_time() - begun < 2
    assert {f.id for f in findings} <= {told, "SRC037"}
    assert findings[0].id == told


def test_an_expansion_bomb_is_never_expanded() -> None:
    rows = ["a0: &a0 x"] + [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]" for n in range(1, 40)]
    source, findings = read_text("\n".join(rows).encode(), "a.yaml")
    assert [f.id for f in findings].count("SRC013") == 40
    assert [f.id for f in findings].count("SRC014") == 39 * 9
    assert isinstance(source.root, Mapping)
    assert plain(source.root.entries["a39"]) == [""] * 9


def test_too_many_values() -> None:
    source, findings = read_text(b"a:\n" + b"- [b,b,b]\n" * 90_000, "a.yaml")
    assert [f.id for f in findings] == ["SRC021"]
    assert source.root is None


def test_too_many_faults_are_cut_short_in_the_order_of_the_file() -> None:
    _, findings = read_text(b"a: b: c\n" * 5_000, "a.yaml")
    assert len(findings) == 501
    assert findings[-1].id == "SRC037"
    assert [f.place.line for f in findings] == sorted(f.place.line for f in findings)


def test_a_line_nobody_can_explain_is_still_a_finding() -> None:
    assert ids(read_text(b"!<", "a.yaml")[1]) == ["SRC036 at 1:3"]


def test_what_cannot_be_opened_is_a_finding(tmp_path: Path) -> None:
    for path in (tmp_path / "none.yaml", tmp_path, Path("a\0b")):
        source, findings = read_file(path, "x.yaml")
        assert ids(findings) == ["SRC002 at 1:1"]
        assert source == SourceFile("x.yaml", (), None)


def check_places(raw: bytes) -> None:
    source, findings = read_text(raw, "a.yaml")
    for finding in findings:
        place = finding.place
        width = len(source.lines[place.line - 1]) if source.lines else 0
        assert 1 <= place.line <= max(1, len(source.lines))
        assert 1 <= place.column <= place.end_column <= width + 1
        assert finding.what
    assert source.root is not None or findings


@settings(max_examples=300, deadline=None)
@given(st.binary(max_size=200))
def test_any_bytes(raw: bytes) -> None:
    check_places(raw)


@settings(max_examples=300, deadline=None)
@given(st.text(max_size=100))
def test_any_text(text: str) -> None:
    check_places(text.encode("utf-8", errors="surrogatepass"))


SIGNS = "\n\n\n  -:#[]{},'\"|>%@`*&!?~\t\\ab1"
WHOLE = (": ", "- ", "? ", "\n  ", "\n    ", "a: ", "---\n", "...\n", "<<: ", "{{", "}}", "key", "null", "\\x07")
PIECES = st.sampled_from([*SIGNS, *WHOLE, "\u200b", "\u00a0", "\x07"])


@settings(max_examples=1000, deadline=None)
@given(st.lists(PIECES, max_size=40).map("".join))
def test_anything_that_looks_like_yaml(text: str) -> None:
    check_places(text.encode())


SAID = "abcxyzµ0123456789"
WORDS = st.text(SAID, min_size=1, max_size=8).filter(lambda word: word != "null")
# one draw a text, its words parted by one blank each: one a word takes twice as long
TEXT = (
    st.text(f"{SAID} ", min_size=1, max_size=35)
    .map(lambda text: " ".join(text.split()))
    .filter(lambda text: text not in {"", "null"})
)
TREES = st.recursive(
    TEXT,
    lambda below: st.lists(below, min_size=1, max_size=4) | st.dictionaries(WORDS, below, min_size=1, max_size=4),
    max_leaves=20,
)


def written(value: object, indent: int = 0) -> str:
    """A tree in block style, the way an author writes it."""
    blanks = " " * indent
    if isinstance(value, dict):
        return "".join(f"{blanks}{key}:{below(entry, indent)}" for key, entry in value.items())
    assert isinstance(value, list)
    return "".join(f"{blanks}-{below(entry, indent)}" for entry in value)


def below(value: object, indent: int) -> str:
    return f" {value}\n" if isinstance(value, str) else "\n" + written(value, indent + 2)


@settings(max_examples=200, deadline=None)
@given(st.dictionaries(WORDS, TREES, min_size=1, max_size=4))
def test_a_written_tree_is_read_back(tree: dict[str, object]) -> None:
    source, findings = read_text(written(tree).encode(), "a.yaml")
    assert findings == []
    assert plain(source.root) == tree


def test_a_mark_tells_its_line_and_columns() -> None:
    for line, column, end in ((1, 1, 1), (4000, 17, 400), (2**21, 2**23, 2**24 - 1)):
        mark = Mark(line, column, end)
        assert (mark.line, mark.column, mark.end_column) == (line, column, end)
    assert Mark(1, 2, 3) != Mark(1, 3, 2)
    assert repr(Mark(1, 2, 3)) == "Mark(1, 2, 3)"


def test_the_same_file_of_two_folders_is_told_by_the_name_it_has_in_each() -> None:
    raw = b"jobs:\n  - id: a\n    id: b\n"
    (first, faults), (second, again) = (read_text(raw, name) for name in ("range/jobs.yaml", "jobs.yaml"))
    assert (first.name, second.name) == ("range/jobs.yaml", "jobs.yaml")
    assert first.root == second.root
    assert faults
    assert {one.place.file for one in faults} == {"range/jobs.yaml"}
    assert {one.place.file for one in again} == {"jobs.yaml"}
