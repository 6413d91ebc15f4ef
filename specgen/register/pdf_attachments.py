"""The files a PDF carries, read from a file that anyone may have made. Called by `issued_file` and by comparing with an issued PDF.

Only the certificate and the model are asked for. What a hostile file may cost is bounded twice: by the limits of the PDF library,
and where the machine can copy a process, by reading in a copy that may take so much memory and time and no more.
"""

from __future__ import annotations

import io
import logging
import multiprocessing
from collections.abc import Callable
from contextlib import suppress
from multiprocessing.connection import Connection
from typing import TYPE_CHECKING, Any

from specgen.register.names import CERTIFICATE, CUSTOMER_MODEL

if TYPE_CHECKING:
    # loading the library is for those who read a PDF
    from pypdf import Configuration

ATTACHMENT_LIMIT = 32 * 1024 * 1024
"""Bytes of one attachment; a model of ours is a hundredth of it."""
MEMORY_LIMIT = 300 * 1024 * 1024
"""Bytes that reading may take beside what the process held before."""
_SECONDS = 60


def attachments(data: bytes) -> dict[str, bytes]:
    """Certificate and model by their names; none where the bytes are no PDF, damaged past reading, or cost more than is given."""
    if "fork" not in multiprocessing.get_all_start_methods():
        return _read(data)
    context = multiprocessing.get_context("fork")
    here, there = context.Pipe(duplex=False)
    copy = context.Process(target=_answer, args=(there, lambda: _read(data)), daemon=True)
    copy.start()
    there.close()
    try:
        found: dict[str, bytes] = here.recv() if here.poll(_SECONDS) else {}
    except (EOFError, OSError):
        found = {}
    finally:
        here.close()
        copy.kill()
        copy.join()
    return found


def _answer(there: Connection, work: Callable[[], dict[str, bytes]]) -> None:
    """In the copy: what is over the bounds says nothing, which the original takes for nothing carried."""
    import os
    import resource

    with suppress(OSError, ValueError, MemoryError):
        with suppress(OSError, ValueError):
            held = int(open("/proc/self/statm", encoding="ascii").read().split()[0]) * resource.getpagesize()  # noqa: SIM115, PTH123
            resource.setrlimit(resource.RLIMIT_AS, (held + MEMORY_LIMIT,) * 2)
        there.send(work())
    os._exit(0)


def _limits() -> Configuration:
    from pypdf import Configuration

    return Configuration(
        maximum_declared_stream_length=ATTACHMENT_LIMIT,
        array_based_stream_maximum_output_length=ATTACHMENT_LIMIT,
        lzw_maximum_output_length=ATTACHMENT_LIMIT,
        run_length_maximum_output_length=ATTACHMENT_LIMIT,
        zlib_maximum_output_length=ATTACHMENT_LIMIT,
        brotli_maximum_output_length=ATTACHMENT_LIMIT,
        stream_decoding_work_maximum_length=3 * ATTACHMENT_LIMIT,
        stream_filters_maximum_length=4,
    )


def _read(data: bytes) -> dict[str, bytes]:
    from pypdf import PdfReader, apply_configuration

    logging.getLogger("pypdf").setLevel(logging.CRITICAL)
    found: dict[str, bytes] = {}
    try:
        with apply_configuration(_limits()):
            held: Any = PdfReader(io.BytesIO(data), strict=False).attachment_list
            for one in held:
                name = str(one.name)
                if name in (CERTIFICATE, CUSTOMER_MODEL) and name not in found:
                    found[name] = bytes(one.content)
    except (KeyboardInterrupt, SystemExit):
        raise
    except BaseException:  # noqa: BLE001  # a damaged file makes the reader fail in every way there is, recursion included
        return found
    return found
