"""One mutation tried: the changed file put into a copy of the sources, its tests run in a forked process, the copy restored.

The process that forks has the heavy libraries imported but nothing of specgen, so that each trial reads the changed program afresh and
none costs the second that importing takes. Called by `mutations`.
"""

from __future__ import annotations

import importlib
import os
import resource
import signal
import sys
import time
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

HEAVY = ("pytest", "hypothesis", "pydantic", "pint", "jinja2", "yaml", "markdown", "babel.messages.pofile", "pypdf", "ruamel.yaml",
         "weasyprint", "segno", "hypothesis.strategies")  # fmt: skip
_MEMORY = 6 << 30
_IMPORTING = 180.0  # seconds a collection may take on a busy machine


@dataclass(frozen=True)
class Outcome:
    """`caught` with the test that failed, `endless` with the test that did not end in twice its limit, or `survived`."""

    status: str
    test: str
    tests_run: int
    seconds: float
    message: str = ""


def warm_up() -> None:
    for name in HEAVY:
        importlib.import_module(name)


def run(tree: Path, tests: list[str], seconds: dict[str, float]) -> Outcome:
    """The tests in the order given, up to the first that fails. A test over its limit is run alone once more before it is called endless."""
    begun = time.monotonic()
    status, test, done, message = _forked(tree, tests, seconds, 1)
    if status == "slow":
        again, _, _, message = _forked(tree, [test] if test else tests[:1], seconds, 2)
        if again == "slow":
            status = "endless"
        elif again == "caught":
            status = "caught"
        else:  # only the machine was slow: go on with the rest
            rest = tests[tests.index(test) + 1 :] if test else tests[1:]
            status, test, more, message = _forked(tree, rest, seconds, 2) if rest else ("survived", "", 0, "")
            status, done = ("unclear" if status == "slow" else status), done + more
    return Outcome(status, test, done, round(time.monotonic() - begun, 1), message)


def _forked(tree: Path, tests: list[str], seconds: dict[str, float], patience: int) -> tuple[str, str, int, str]:
    progress = tree.parent / f"{tree.name}.progress"
    progress.write_text("")
    child = os.fork()
    if child == 0:
        os.setsid()
        try:
            _in_child(tree, tests, progress)
        finally:
            os._exit(70)
    current, since, done = "", time.monotonic(), 0
    while True:
        ended = os.waitpid(child, os.WNOHANG)[0] == child
        lines = [line for line in progress.read_text().split("\n") if line]
        starts = [line[6:] for line in lines if line.startswith("start ")]
        failed = next((line[5:] for line in lines if line.startswith("fail ")), None)
        if failed is not None or ended:
            _end(child, ended)
            if failed is not None:
                test, _, message = failed.partition("\t")
                return "caught", test, len(starts), message
            # a process that died without a word, by a signal or an exit of its own, is a failure too
            return ("survived", "", len(starts), "") if "done" in lines else ("caught", current, len(starts), "died")
        if len(starts) != done:
            current, since, done = starts[-1], time.monotonic(), len(starts)
        limit = max(60.0, 20 * seconds.get(current, 0.0)) if current else _IMPORTING
        if time.monotonic() - since > limit * patience:
            _end(child, ended)
            return "slow", current, done, ""
        time.sleep(0.1)


def _end(child: int, ended: bool) -> None:
    with suppress(ProcessLookupError):
        os.killpg(child, signal.SIGKILL)
    if not ended:
        os.waitpid(child, 0)


def _in_child(tree: Path, tests: list[str], progress: Path) -> None:
    import pytest

    out = os.open(tree.parent / f"{tree.name}.out", os.O_WRONLY | os.O_CREAT | os.O_TRUNC)
    os.dup2(out, 1)
    os.dup2(out, 2)
    os.chdir(tree)
    os.environ["PYTHONPATH"] = str(tree)
    sys.path[:] = [str(tree), *(p for p in sys.path if "campaigns" not in p)]
    sys.dont_write_bytecode = True
    resource.setrlimit(resource.RLIMIT_AS, (_MEMORY, _MEMORY))
    files = list(dict.fromkeys(test.split("::")[0] for test in tests))
    with progress.open("a", buffering=1) as told:
        code = pytest.main(
            ["-q", "-x", "-p", "no:cacheprovider", "--hypothesis-seed=0", *files], plugins=[_Chosen(tree, tests, told)]
        )
        if code == 0:
            told.write("done\n")
        elif code not in (1, 2):  # nothing collected, or a fault of the campaign itself
            told.write(f"fail (pytest ended with {int(code)})\n")
    os._exit(0)


class _Chosen:
    """Keeps only the chosen tests, in the order given, and writes down what happens."""

    def __init__(self, tree: Path, tests: list[str], told: object) -> None:
        self.tree, self.told = tree, told
        self.rank = {test: at for at, test in enumerate(tests)}

    def pytest_collection_modifyitems(self, items: list) -> None:
        items[:] = sorted((i for i in items if i.nodeid in self.rank), key=lambda i: self.rank[i.nodeid])
        if sys.modules["specgen"].__file__ != str(self.tree / "specgen/__init__.py"):
            os._exit(71)

    def pytest_runtest_logstart(self, nodeid: str, location: tuple) -> None:
        self.told.write(f"start {nodeid}\n")

    def pytest_runtest_logreport(self, report) -> None:
        if report.failed:
            self._fail(report.nodeid, report)

    def pytest_collectreport(self, report) -> None:
        if report.failed:
            self._fail(f"(import) {report.nodeid}", report)

    def _fail(self, test: str, report) -> None:
        last = str(report.longrepr).strip().split("\n")
        errors = [line[4:].strip() for line in last if line.startswith("E  ")]
        self.told.write(f"fail {test}\t{(errors or last[-1:])[0][:200]}\n")
