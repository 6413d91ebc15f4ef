"""Which test executes which line, and how long each takes: worked out once on the sound program. Called by `mutations`.

One process a file of tests, watched by `coverage` with one context a test. A line that runs only at import, or whose answer is kept
for later tests, is executed by more tests than are seen: `choose` adds some that enter the same file.
"""

from __future__ import annotations

import difflib
import json
import os
import re
import subprocess
import sys
from collections import Counter, defaultdict
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import coverage
from mutating.places import Place

# the tests of a floor, then the nearest ones that ask it for something
TESTS = {
    "trade": ("trade", "facts", "rules", "documents"),
    "facts": ("facts", "trade", "rules", "test_second_good.py", "documents", "comparison"),
    "rules": ("rules", "test_second_good.py", "facts", "documents"),
    "documents": ("documents", "test_second_good.py", "rendering", "facts"),
    "register": ("register", "commands"),
    "comparison": ("comparison", "report", "commands"),
}
_PAGE = re.compile(r'"""([A-Z]{3}\d{3}) ')  # how a rule module opens
_WATCHED = """
import json, os, sys
import coverage, pytest
cov = coverage.Coverage(data_file=sys.argv[1] + ".cov", source=["specgen"], config_file=False)
cov.start()
seen = {}
class Watch:
    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item):
        cov.switch_context(item.nodeid)
        begun = sum(os.times()[:4])  # of this process and its children: how busy the machine is counts for nothing
        answer = yield
        seen[item.nodeid] = [sum(os.times()[:4]) - begun, seen.get(item.nodeid, [0, True])[1]]
        cov.switch_context("")
        return answer
    def pytest_runtest_logreport(self, report):
        if report.outcome != "passed":
            seen[report.nodeid] = [0, False]
pytest.main(["-q", "-p", "no:cacheprovider", "--hypothesis-seed=0", sys.argv[2]], plugins=[Watch()])
cov.stop(); cov.save()
json.dump({name: seconds for name, (seconds, sound) in seen.items() if sound}, open(sys.argv[1] + ".json", "w"))
"""


def watch(tree: Path, store: Path, floors: list[str], processes: int) -> None:
    """Run every file of tests of these floors once; what is there already is kept, so that a run that was ended goes on."""
    store.mkdir(parents=True, exist_ok=True)
    folders = sorted({folder for floor in floors for folder in TESTS[floor]})
    files = [file for folder in folders for file in _files(tree / "tests" / folder)]

    def one(file: Path) -> None:
        name = "-".join(file.relative_to(tree / "tests").with_suffix("").parts)
        if (store / f"{name}.json").exists():
            return
        with (store / f"{name}.log").open("w") as log:
            run = [sys.executable, "-c", _WATCHED, str(store / name), str(file.relative_to(tree))]
            subprocess.run(
                run, cwd=tree, env={**os.environ, "PYTHONPATH": str(tree)}, stdout=log, stderr=log, check=True
            )

    with ThreadPoolExecutor(processes) as pool:
        list(pool.map(one, files))


def _files(tests: Path) -> list[Path]:
    return [tests] if tests.suffix == ".py" else sorted(tests.rglob("test_*.py"))


class Executed:
    """The answers of `watch`, read once: seconds of each sound test, and the tests that run a line of the program as it stands now.

    The watched state may be older than the one that is changed: a line is found again by comparing the two files, a file that was moved
    by the lines it has in common.
    """

    def __init__(self, store: Path, watched: Path, tree: Path) -> None:
        self._watched, self._tree = watched, tree
        self.seconds: dict[str, float] = {}
        self._data: list[coverage.CoverageData] = []
        for file in sorted(store.glob("*.json")):
            self.seconds.update(json.loads(file.read_text()))
            data = coverage.CoverageData(str(file.with_suffix(".cov")))
            data.read()
            self._data.append(data)
        self._files: dict[str, dict[int, set[str]]] = {}
        self._sources: dict[str, str] = {}

    def lines(self, file: str) -> dict[int, set[str]]:
        """Line of the file as it stands now -> the tests that execute it."""
        if file not in self._files:
            now, older = (self._tree / file).read_text().splitlines(), self._older(file)
            seen = self._seen(str(older.relative_to(self._watched)))
            found: dict[int, set[str]] = {}
            for old, new, length in difflib.SequenceMatcher(
                None, older.read_text().splitlines(), now, False
            ).get_matching_blocks():
                found |= {new + at: seen[old + at] for at in range(1, length + 1) if old + at in seen}
            self._files[file] = found
        return self._files[file]

    def _older(self, file: str) -> Path:
        if (self._watched / file).exists():
            return self._watched / file
        lines = set((self._tree / file).read_text().splitlines())
        candidates = sorted((self._watched / "specgen").rglob("*.py"))
        return max(candidates, key=lambda other: len(lines & set(other.read_text().splitlines())))

    def _seen(self, file: str) -> dict[int, set[str]]:
        found: dict[int, set[str]] = defaultdict(set)
        for data in self._data:
            for path in data.measured_files():
                if path.endswith("/" + file):
                    for line, tests in data.contexts_by_lineno(path).items():
                        found[line].update(test for test in tests if test in self.seconds)
        return found

    def choose(self, place: Place, floor: str, names: set[str], sure: float, further: float) -> list[str]:
        """Up to `sure` seconds of tests that execute the place (twice that of the floor's own), the tests nobody watched yet, then `further` seconds
        that enter the file or are of the floor (what a cache answers is executed by the first that asks alone).

        Of each the floor's own first, the quickest first, and those of the rules that use the file before them; before all
        the examples of the rule itself, whether they were watched or came later.
        """
        of_file = self.lines(place.file)
        here: set[str] = set()
        if place.scope:
            here = {test for line in range(place.line, place.end_line + 1) for test in of_file.get(line, ())}
        fresh = {test for test in names - set(self.seconds) if _folder(test) in TESTS[floor]}
        around = {test for test in names if _folder(test) == TESTS[floor][0]}
        around |= {test for tests in of_file.values() for test in tests}
        around -= here | fresh
        pages = self._pages(place.file)
        chosen = [
            *self._within(here & names, sure, floor, pages),
            *self._within(fresh, sure, floor, pages),
            *self._within(around & names, further, floor, pages),
        ]
        own = _PAGE.match(self._sources[place.file])
        return sorted(chosen, key=lambda test: own is not None and own[1] not in test)

    def _pages(self, file: str) -> set[str]:
        """Ids of the rule in the file, or of the rules that import it themselves or by one module between."""
        if not self._sources:
            self._sources = {
                str(path.relative_to(self._tree)): path.read_text() for path in (self._tree / "specgen").rglob("*.py")
            }
        users = {file}
        for _ in range(2):
            names = {
                user.removesuffix(".py").replace("/", ".") for user in users if not _PAGE.match(self._sources[user])
            }
            users |= {
                path for path, text in self._sources.items() if any(f"from {name} import" in text for name in names)
            }
        return {page[1] for user in users for page in [_PAGE.match(self._sources[user])] if page}

    def _within(self, tests: set[str], budget: float, floor: str, pages: set[str]) -> list[str]:
        order = {folder: at for at, folder in enumerate(TESTS[floor])}
        alike: Counter[str] = Counter()
        ranked = []
        for test in sorted(tests, key=lambda test: (self.seconds.get(test, 0.4), test)):
            if _folder(test) in order:
                function = test.split("[")[0]
                # one case of every test in turn, so that a large family of cases does not crowd out the rest
                rank = order[_folder(test)], not any(page in test for page in pages), alike[function]
                ranked.append((*rank, self.seconds.get(test, 0.4), test))
                alike[function] += 1
        ranked.sort()
        spent = 0.0
        chosen = []
        for folder, _, _, seconds, test in ranked:
            spent += seconds
            if spent <= (2 * budget if folder == 0 else budget) or not chosen:
                chosen.append(test)
        return chosen


def _folder(test: str) -> str:
    return test.split("/")[1].split("::")[0]
