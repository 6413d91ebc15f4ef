"""The command line: `main` runs the command that is chosen and prints what it comes to; no exception comes out of it.

A command's module is imported once it is chosen, so that `specgen --help` and a mistyped command answer at once.
"""

from __future__ import annotations

import gc
import os
import signal
import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, nullcontext, suppress
from types import FrameType
from typing import IO

from specgen.commands.arguments import read_arguments
from specgen.commands.outcome import NOT_RUN, Outcome
from specgen.findings import CannotDoError

_INTERRUPTED = 130
_RECORDS_BETWEEN_COLLECTIONS = 100_000
# what a machine that shuts down and a terminal that is closed send; SIGHUP is not known everywhere
_STOPS = tuple(getattr(signal, name) for name in ("SIGTERM", "SIGHUP") if hasattr(signal, name))


class _StoppedError(KeyboardInterrupt):
    """The program was told to stop; its argument is the number of the signal."""


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command with `argv` (those of the process if None) and return its exit code; no exception comes out."""
    _speak_utf8()
    if argv is None:
        # what is imported and read stays to the end of the process: going through it again and again finds no rubbish
        gc.set_threshold(_RECORDS_BETWEEN_COLLECTIONS)
    try:
        # the signals of a program that merely calls us are its own affair
        with _stopping_in_order() if argv is None else nullcontext():
            outcome = _run(sys.argv[1:] if argv is None else argv)
            code = _print(outcome)
        if argv is None:
            # the process ends: Python would go through all there is once more
            gc.freeze()
        return code
    except _StoppedError as stop:
        return 128 + int(stop.args[0])
    except KeyboardInterrupt:
        return _INTERRUPTED


@contextmanager
def _stopping_in_order() -> Iterator[None]:
    """A signal to stop becomes an interrupt, so that half-written files are taken away on the way out."""

    def stop(number: int, _: FrameType | None) -> None:
        for each in _STOPS:
            # the way out is not to be interrupted again
            signal.signal(each, signal.SIG_IGN)
        raise _StoppedError(number)

    # what a parent has switched off, as `nohup` does, stays off
    before = {each: signal.getsignal(each) for each in _STOPS if signal.getsignal(each) is not signal.SIG_IGN}
    for each in before:
        signal.signal(each, stop)
    try:
        yield
    finally:
        for each, handler in before.items():
            signal.signal(each, handler)


def _run(argv: Sequence[str]) -> Outcome:
    try:
        command, arguments = read_arguments(argv)
        return command(arguments)
    except CannotDoError as reason:
        return Outcome("", NOT_RUN, _line(str(reason)))
    except SystemExit as done:  # argparse has printed its help
        return Outcome("", done.code if isinstance(done.code, int) else NOT_RUN)
    except MemoryError:
        return Outcome("", NOT_RUN, _line("there is not enough memory for this; divide the folder, or name less of it"))
    except OSError as refused:
        _trace()
        where = f"{refused.filename}: " if refused.filename else ""
        return Outcome("", NOT_RUN, _line(f"the machine refuses: {where}{refused.strerror or refused}"))
    except Exception as fault:  # noqa: BLE001  # whatever it is, the user gets a line and not a traceback
        _trace()
        return Outcome("", NOT_RUN, _line(f"internal fault ({type(fault).__name__}: {fault}); please report it"))


def _trace() -> None:
    if os.environ.get("SPECGEN_TRACEBACK") == "1":
        import traceback

        traceback.print_exc()


def _line(text: str) -> str:
    from specgen.report.lines import one_line

    return f"specgen: {one_line(text)}\n"


def _print(outcome: Outcome) -> int:
    """The exit code of the outcome, or that of not having been able to print it."""
    code = outcome.code
    try:
        _write(sys.stdout, outcome.out)
    except BrokenPipeError:
        # whoever was reading has read enough
        _forget(sys.stdout)
    except OSError as error:
        _forget(sys.stdout)
        code = NOT_RUN
        outcome = Outcome("", code, outcome.err + _line(f"the output cannot be written: {error.strerror}"))
    with suppress(OSError):
        _write(sys.stderr, outcome.err)
    return code


def _write(stream: IO[str] | None, text: str) -> None:
    # a process without a screen has no stream at all
    if stream is not None and text:
        stream.write(text)
        stream.flush()


def _forget(stream: IO[str]) -> None:
    """Lead the rest of a stream nowhere, or Python would complain once more on its way out."""
    with suppress(OSError, ValueError):
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, stream.fileno())
        os.close(nowhere)


def _speak_utf8() -> None:
    """Reports hold signs such as µ and °, whatever the machine's own encoding is."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(encoding="utf-8", errors="backslashreplace")
