"""`main` in a process of its own, as a shell sees it: quick, quiet, UTF-8, and never a traceback."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from specgen import __version__
from specgen.commands import main
from tests.good_spec import GOOD

_ROOT = Path(__file__).parents[2]
_HEAVY = ("pydantic", "pint", "yaml", "jinja2", "weasyprint", "markdown")


def _run(*arguments: str, env: dict[str, str] | None = None, **options: object) -> subprocess.CompletedProcess[bytes]:
    return subprocess.run(  # type: ignore[call-overload,no-any-return]  # options differ by test
        [sys.executable, "-m", "specgen", *arguments],
        cwd=_ROOT,
        env={**os.environ, **(env or {})},
        check=False,
        **{"capture_output": True, **options},
    )


def test_help_imports_nothing_heavy() -> None:
    script = (
        "import sys\n"
        "from specgen.commands import main\n"
        "code = main(['--help'])\n"
        f"print(code, [name for name in {_HEAVY!r} if name in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", script], cwd=_ROOT, capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "0 []"


def test_help_lists_every_command() -> None:
    text = _run("--help").stdout.decode()
    assert [line.split()[0] for line in text.splitlines() if line.startswith("  ") and "-" not in line.split()[0]] == [
        "check",
        "render",
        "compare",
        "approve",
        "issue",
        "verify",
        "register",
        "explain",
        "assess",
        "climate",
        "schedule",
        "range",
        "schema",
        "new",
        "upgrade",
    ]


def test_version(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--version"]) == 0
    assert capsys.readouterr().out == f"specgen {__version__}\n"


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (
            [],
            "which command? It is one of: check, render, compare, approve, issue, verify, register, explain, assess, climate, schedule, where-used, range, schema, new, upgrade; see `specgen --help`",
        ),
        (["chekc"], "there is no command 'chekc'; did you mean check?"),
        (
            ["zzz"],
            "there is no command 'zzz'; it is one of: check, render, compare, approve, issue, verify, register, explain, assess, climate, schedule, where-used, range, schema, new, upgrade",
        ),
        (["--quiet"], "unrecognized arguments: --quiet; see `specgen --help`"),
        (["check"], "the following arguments are required: PATH; see `specgen check --help`"),
        (["check", ""], "the path is empty; name the folder of the sources"),
        (["check", "nowhere"], "nowhere: there is no such file or folder."),
        (["check", "a\0b"], "a\ufffdb: there is no such file or folder."),
        (["check", "a\x1b[31m"], "a\ufffd[31m: there is no such file or folder."),
        (
            ["check", ".", "--format", "xml"],
            "--format: invalid choice: 'xml' (choose from 'text', 'json', 'github'); see `specgen check --help`",
        ),
        (
            ["check", ".", "--fail-on", "never"],
            "--fail-on: invalid choice: 'never' (choose from 'error', 'warning', 'note'); see `specgen check --help`",
        ),
        (
            ["check", ".", "--on", "20260331"],
            "--on: '20260331' is not a day; write year, month and day, as in 2026-03-31; see `specgen check --help`",
        ),
        (
            ["check", ".", "--on", "2026-02-30"],
            "--on: '2026-02-30' is not a day; write year, month and day, as in 2026-03-31; see `specgen check --help`",
        ),
        (["check", ".", "--form", "text"], "unrecognized arguments: --form text; see `specgen check --help`"),
        (["check", ".", "more"], "unrecognized arguments: more; see `specgen check --help`"),
        (["render", "."], "the following arguments are required: --out; see `specgen render --help`"),
        (
            ["explain"],
            "name what to explain: the id of a finding, table:NAME, --job ID or --product ID; --list lists the ids",
        ),
    ],
)
def test_what_cannot_run_is_one_plain_line(arguments: list[str], said: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(arguments) == 2
    printed = capsys.readouterr()
    assert (printed.out, printed.err) == ("", f"specgen: {said}\n")


@pytest.mark.parametrize("command", ["check", "render", "explain", "schema", "new"])
def test_help_of_a_command(command: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main([command, "--help"]) == 0
    printed = capsys.readouterr()
    assert printed.out.startswith(f"usage: specgen {command} [-h]")
    assert printed.err == ""


def test_output_is_utf8_whatever_the_locale() -> None:
    done = _run("explain", "SRC041", env={"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONIOENCODING": "ascii"})
    assert done.returncode == 0
    done = _run("new", "system", env={"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONIOENCODING": "ascii"})
    assert (done.returncode, done.stderr) == (0, b"")
    done = _run("schema", "system", env={"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONIOENCODING": "ascii"})
    assert "µm" in done.stdout.decode("utf-8")


def _break(monkeypatch: pytest.MonkeyPatch, fault: BaseException) -> None:
    from specgen.commands import schema

    def broken(_: object) -> None:
        raise fault

    monkeypatch.setattr(schema, "run", broken)


def test_internal_fault_is_a_line(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    monkeypatch.delenv("SPECGEN_TRACEBACK", raising=False)
    _break(monkeypatch, ZeroDivisionError("division\nby zero"))
    assert main(["schema", "job"]) == 2
    printed = capsys.readouterr()
    assert printed.out == ""
    assert printed.err == "specgen: internal fault (ZeroDivisionError: division by zero); please report it\n"


@pytest.mark.parametrize(
    ("fault", "said"),
    [
        (MemoryError(), "there is not enough memory for this; divide the folder, or name less of it"),
        (OSError(28, "No space left on device", "/x/y"), "the machine refuses: /x/y: No space left on device"),
        (OSError(30, "Read-only file system"), "the machine refuses: Read-only file system"),
    ],
)
def test_a_full_disk_or_no_memory_is_no_fault_of_the_program(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], fault: BaseException, said: str
) -> None:
    monkeypatch.delenv("SPECGEN_TRACEBACK", raising=False)
    _break(monkeypatch, fault)
    assert main(["schema", "job"]) == 2
    assert capsys.readouterr() == ("", f"specgen: {said}\n")


def test_developers_may_see_the_traceback(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    monkeypatch.setenv("SPECGEN_TRACEBACK", "1")
    _break(monkeypatch, RecursionError("too deep"))
    assert main(["schema", "job"]) == 2
    printed = capsys.readouterr().err
    assert printed.startswith("Traceback (most recent call last):\n")
    assert printed.endswith("specgen: internal fault (RecursionError: too deep); please report it\n")


def test_interrupt_is_quiet(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    _break(monkeypatch, KeyboardInterrupt())
    assert main(["schema", "job"]) == 130
    assert capsys.readouterr() == ("", "")


@pytest.mark.skipif(os.name == "nt", reason="pipes and signals of a POSIX shell")
def test_interrupt_from_the_keyboard_is_quiet() -> None:
    script = (
        "import os, signal, sys\n"
        "from specgen.commands import check, main\n"
        "check.run = lambda _: os.kill(os.getpid(), signal.SIGINT)\n"
        "sys.exit(main(['check', '.']))"
    )
    # a process that a shell put in the background would be deaf to the signal
    done = subprocess.run(
        [sys.executable, "-c", script],
        cwd=_ROOT,
        capture_output=True,
        check=False,
        preexec_fn=lambda: signal.signal(signal.SIGINT, signal.default_int_handler),
    )
    assert (done.returncode, done.stdout, done.stderr) == (130, b"", b"")


@pytest.mark.skipif(os.name == "nt", reason="pipes and signals of a POSIX shell")
@pytest.mark.parametrize(("name", "code"), [("SIGTERM", 143), ("SIGHUP", 129)])
def test_a_signal_to_stop_leaves_no_temporary_file(name: str, code: int, tmp_path: Path) -> None:
    script = (
        "import os, signal, sys\n"
        "from pathlib import Path\n"
        "from specgen.commands import check, main\n"
        "from specgen.rendering import writing\n"
        f"writing._confirm_folder = os.replace = lambda *_: os.kill(os.getpid(), signal.{name})\n"
        f"check.run = lambda _: writing.write_all(Path({str(tmp_path)!r}), {{'a.pdf': b'1', 'b.pdf': b'2'}})\n"
        "sys.argv = ['specgen', 'check', '.']\n"
        "sys.exit(main())"
    )
    done = subprocess.run(
        [sys.executable, "-c", script],
        cwd=_ROOT,
        capture_output=True,
        check=False,
        preexec_fn=lambda: signal.signal(getattr(signal, name), signal.SIG_DFL),
    )
    assert (done.returncode, done.stdout, done.stderr) == (code, b"", b"")
    assert list(tmp_path.iterdir()) == []


@pytest.mark.skipif(os.name == "nt", reason="pipes and signals of a POSIX shell")
def test_broken_pipe_is_quiet_and_keeps_the_code() -> None:
    reader, writer = os.pipe()
    os.close(reader)
    try:
        done = _run("check", str(GOOD), capture_output=False, stdout=writer, stderr=subprocess.PIPE)
    finally:
        os.close(writer)
    assert (done.returncode, done.stderr) == (0, b"")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs a disk that is always full")
def test_full_disk_is_said() -> None:
    with Path("/dev/full").open("wb") as full:
        done = _run("schema", "job", capture_output=False, stdout=full, stderr=subprocess.PIPE)
    assert done.returncode == 2
    assert done.stderr == b"specgen: the output cannot be written: No space left on device\n"


@pytest.mark.skipif(os.name == "nt", reason="closing a stream is the shell's on Windows")
def test_closed_output_is_no_fault() -> None:
    command = f'exec "{sys.executable}" -m specgen check "{GOOD}" >&-'
    done = subprocess.run(["sh", "-c", command], cwd=_ROOT, capture_output=True, check=False)
    assert (done.returncode, done.stderr) == (0, b"")
