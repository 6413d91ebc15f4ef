"""The good specification as two folders: a range of products, preparations and systems, and a customer's folder that stands on it."""

from __future__ import annotations

import json
import subprocess
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from tests.good_spec import GOOD, good, put, take_out, written

OF_THE_RANGE = ("products", "preparations", "systems")
RANGE = "range: ../range"


def two_folders(
    place: Path,
    *,
    own: Mapping[str, Any] | None = None,
    of_range: Mapping[str, Any] | None = None,
    way: str = "../range",
) -> Path:
    """The customer's folder, `place/yard`; the range lies beside it. `own` and `of_range` are changes to either."""
    whole = good()
    range_ = {kind: whole.pop(kind) for kind in OF_THE_RANGE}
    range_["project"] = {**whole["project"], "id": "range", "title": "Range of Example Coatings"}
    take_out(range_, "project.customer")
    for name in ("maker", "users"):
        take_out(whole, f"project.{name}")
    whole["project"]["range"] = way
    for spec, changes in ((whole, own), (range_, of_range)):
        for path, value in (changes or {}).items():
            put(spec, path, json.loads(json.dumps(value)))
    for name, spec in (("yard", whole), ("range", range_)):
        folder = place / name
        folder.mkdir(parents=True)
        (folder / "project.yaml").write_text(written({"project": spec.pop("project")}), "utf-8")
        (folder / "records.yaml").write_text(written(spec), "utf-8")
        (folder / "sketch.svg").write_bytes((GOOD / "sketch.svg").read_bytes())
    return place / "yard"


def git(folder: Path, *arguments: str) -> str:
    who = ("-c", "user.name=x", "-c", "user.email=x@example.org")
    done = subprocess.run(["git", *who, *arguments], cwd=folder, check=True, capture_output=True, text=True)
    return done.stdout.strip()


def kept_in_git(place: Path, tag: str) -> None:
    """Everything below the folder as a revision of that name."""
    if not (place / ".git").exists():
        git(place, "init", "--quiet")
    git(place, "add", "-A")
    git(place, "commit", "--quiet", "-m", tag)
    git(place, "tag", tag)
