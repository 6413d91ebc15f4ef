"""A job like one that is there, as text: its comments and layout kept, what belongs to that job alone emptied. Called by `specgen new`.

Emptied are id, number, reason for change, dates, vehicles, items, orders, pictures and waivers; a key that is left out whole is named in a
comment. Text that still speaks of the old
job, its vehicles, parts or metal, is marked by a comment in front of it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from difflib import get_close_matches
from pathlib import Path

from specgen.commands.empty_source import empty_item
from specgen.commands.outcome import CannotRunError
from specgen.source.project import find_project, read_project
from specgen.source.tree import Mapping, Scalar, Sequence, SourceFile

# keys of a job, by their depth below it, that hold for that job alone
_EMPTIED = {"number", "reason_for_change"}
_LEFT_OUT = {"starts", "vehicles", "waivers", "figures", "marked", "ordered", "patch_test"}
# what says in words what this job is, so that it is never another's as it stands
_OF_THE_JOB = {"title", "scope"}
_KEY = re.compile(r"(?P<blanks> *)(?P<dash>- )?(?P<key>[a-z_]+):(?P<rest>.*)$")
_OWN = re.compile(r"\b(number|reason_for_change|title): *(?:\"[^\"]*\"|[^,}]*)")
_BLOCK_TEXT = re.compile(r":\s*[>|][+-]?\s*$")
_ANY_PART = {
    *("with", "both", "face", "faces", "side", "sides", "outer", "inner", "left", "right", "part", "parts", "front"),
    *("rear", "long", "short"),
}
_METALS = (
    *("cold-rolled", "hot-rolled", "galvanised", "galvanized", "zinc", "aluminium", "stainless", "cast iron", "copper"),
    *("magnesium", "steel", "plastic", "GRP"),
)


def job_like(path: Path, asked: str) -> str:
    """The text of a new job. Raises CannotRunError where there is no such job."""
    source, job = _found(path, asked)
    _refuse_other_layout(source, job, asked)
    block = _block(source.lines, job)
    words = _words(job)
    told = [f"# A new job like {asked}: fill what stands open, and read every line.", "jobs:"]
    return "\n".join([*told, *_rewritten(block, words)]) + "\n"


def _found(path: Path, asked: str) -> tuple[SourceFile, Mapping]:
    known: list[str] = []
    for source in read_project(find_project(path)).files:
        jobs = source.root.entries.get("jobs") if isinstance(source.root, Mapping) else None
        for job in jobs.items if isinstance(jobs, Sequence) else ():
            id = job.entries.get("id") if isinstance(job, Mapping) else None
            if isinstance(job, Mapping) and isinstance(id, Scalar):
                known.append(id.text)
                if id.text == asked:
                    return source, job
    near = get_close_matches(asked, known, n=3) or known
    raise CannotRunError(
        f"there is no job {asked!r}; {'nearest' if near is not known else 'there is'}: {', '.join(near) or 'none'}"
    )


def _refuse_other_layout(source: SourceFile, job: Mapping, asked: str) -> None:
    """A job is copied line by line, so each of its keys has to begin a line of its own, the first behind the hyphen."""
    marks = sorted(job.keys.items(), key=lambda held: (held[1].line, held[1].column))
    for at, (key, mark) in enumerate(marks):
        found = _KEY.match(source.lines[mark.line - 1])
        if found is None or found["key"] != key or (found["dash"] is None) is (at == 0):
            raise CannotRunError(
                f"{source.name}:{mark.line}: the job {asked} is not written as it can be copied; write each key on a line of its own, "
                "without quotes or braces round it, and the first one behind the hyphen"
            )


def _block(lines: tuple[str, ...], job: Mapping) -> list[str]:
    """The lines of the job, as deep as below a `jobs:` of its own."""
    first = min(mark.line for mark in job.keys.values()) - 1
    dash = lines[first].index("-") if "-" in lines[first] else 0
    block = [lines[first]]
    for line in lines[first + 1 :]:
        depth = len(line) - len(line.lstrip())
        if line.strip() and depth <= dash:
            break
        block.append(line)
    while block and (not block[-1].strip() or block[-1].lstrip().startswith("#")):
        block.pop()
    return [line[dash - 2 :] if dash >= 2 else " " * (2 - dash) + line for line in block]


def _words(job: Mapping) -> list[str]:
    """What only the old job is called: its number, vehicles and parts, and the metals that its text may name."""
    document, vehicles, items = (job.entries.get(key) for key in ("document", "vehicles", "items"))
    number = document.entries.get("number") if isinstance(document, Mapping) else None
    found = [number.text] if isinstance(number, Scalar) else []
    for held in vehicles.items if isinstance(vehicles, Sequence) else ():
        if isinstance(held, Scalar):
            # `Tower wagon 214` is spoken of as wagon 214
            found += [held.text, *re.findall(r"[A-Za-z]*\d[\w-]+", held.text)]
    for item in items.items if isinstance(items, Sequence) else ():
        name = item.entries.get("name") if isinstance(item, Mapping) else None
        if isinstance(name, Scalar):
            found += [word.lower() for word in re.findall(r"[^\W\d_]{4,}", name.text) if word.lower() not in _ANY_PART]
    return [*dict.fromkeys(found), *_METALS]


def _rewritten(block: list[str], words: list[str]) -> Iterator[str]:
    number = 0
    while number < len(block):
        line = block[number]
        held = [line]
        found = _KEY.match(line)
        if found is None:
            yield line
            number += 1
            continue
        depth = len(found["blanks"]) + len(found["dash"] or "")
        after = number + 1
        while after < len(block) and _deeper(block[after], depth):
            held.append(block[after])
            after += 1
        key = found["key"]
        if key == "items" and depth == 4:
            yield empty_item(4)
            number = after
        elif key in _LEFT_OUT and not found["dash"]:
            yield f"{found['blanks']}# {key} of the other job left out; write {key} here where this job has its own"
            number = after
        elif key in _EMPTIED or (key == "id" and depth == 4):
            yield f"{found['blanks']}{found['dash'] or ''}{key}:"
            number = after
        elif key == "document" and "{" in line:
            yield _OWN.sub(r"\1: ", line)
            number = after
        else:
            whole = held if _BLOCK_TEXT.search(line) else [line]
            stale = _stale(whole, words, key)
            if stale or key in _OF_THE_JOB:
                yield f"{' ' * depth if not found['dash'] else found['blanks']}# still so?{' ' if stale else ''}{', '.join(stale)}"
            yield from whole
            number += len(whole)


def _deeper(line: str, depth: int) -> bool:
    """True for a line below a key at that depth; entries of a list may stand at the depth of their key."""
    indent = len(line) - len(line.lstrip())
    return not line.strip() or indent > depth or (line.lstrip().startswith("- ") and indent >= depth)


def _stale(lines: list[str], words: list[str], key: str) -> list[str]:
    """Words of the old job in free text; what is typed from a list (material, preparation) is there to be changed anyway."""
    if key in {"material", "preparation", "system", "zeroed_on", "principle"}:
        return []
    text = " ".join(lines)
    return [word for word in words if re.search(rf"(?<![\w-]){re.escape(word)}s?(?![\w-])", text, re.IGNORECASE)]
