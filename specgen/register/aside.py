"""Reads a file that anyone may have made in a copy of this process, which may take so much memory and time and no more.

Called by `pdf_attachments`, `zip_entries`, and what looks for names in readings that are kept.
"""

from __future__ import annotations

import multiprocessing
from collections.abc import Callable
from contextlib import suppress
from multiprocessing.connection import Connection
from typing import TypeVar

Answer = TypeVar("Answer")

MEMORY_LIMIT = 300 * 1024 * 1024
"""Bytes that reading may take beside what the process held before."""
_SECONDS = 60


def aside(work: Callable[[], Answer], otherwise: Answer) -> Answer:
    """What `work` comes to; `otherwise` where it cost more than is given. A machine that copies no process does it here, unbounded."""
    if "fork" not in multiprocessing.get_all_start_methods():
        return work()
    context = multiprocessing.get_context("fork")
    here, there = context.Pipe(duplex=False)
    copy = context.Process(target=_answer, args=(there, work), daemon=True)
    copy.start()
    there.close()
    try:
        found: Answer = here.recv() if here.poll(_SECONDS) else otherwise
    except (EOFError, OSError):
        found = otherwise
    finally:
        here.close()
        copy.kill()
        copy.join()
    return found


def _answer(there: Connection, work: Callable[[], object]) -> None:
    """In the copy: what is over the bounds says nothing."""
    import os
    import resource

    with suppress(OSError, ValueError, MemoryError):
        with suppress(OSError, ValueError):
            held = int(open("/proc/self/statm", encoding="ascii").read().split()[0]) * resource.getpagesize()  # noqa: SIM115, PTH123
            resource.setrlimit(resource.RLIMIT_AS, (held + MEMORY_LIMIT,) * 2)
        there.send(work())
    os._exit(0)
