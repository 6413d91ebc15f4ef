"""The files a PDF carries, read from a file that anyone may have made. Called by `issued_file` and by comparing with an issued PDF.

Only the certificate and the model are asked for. What a hostile file may cost is bounded twice: by the limits of the PDF library,
and by reading `aside`.
"""

from __future__ import annotations

import io
import logging
from typing import TYPE_CHECKING, Any

from specgen.register.aside import aside
from specgen.register.names import CERTIFICATE, CUSTOMER_MODEL
from specgen.source.bounded_json import JSON_LIMIT

if TYPE_CHECKING:
    # loading the library is for those who read a PDF
    from pypdf import Configuration


def attachments(data: bytes) -> dict[str, bytes]:
    """Certificate and model by their names; none where the bytes are no PDF, damaged past reading, or cost more than is given."""
    return aside(lambda: _read(data), {})


def pdf_limits() -> Configuration:
    """How much of a PDF that anyone may have made is unpacked."""
    from pypdf import Configuration

    return Configuration(
        maximum_declared_stream_length=JSON_LIMIT,
        array_based_stream_maximum_output_length=JSON_LIMIT,
        lzw_maximum_output_length=JSON_LIMIT,
        run_length_maximum_output_length=JSON_LIMIT,
        zlib_maximum_output_length=JSON_LIMIT,
        brotli_maximum_output_length=JSON_LIMIT,
        stream_decoding_work_maximum_length=3 * JSON_LIMIT,
        stream_filters_maximum_length=4,
    )


def _read(data: bytes) -> dict[str, bytes]:
    from pypdf import PdfReader, apply_configuration

    logging.getLogger("pypdf").setLevel(logging.CRITICAL)
    found: dict[str, bytes] = {}
    try:
        with apply_configuration(pdf_limits()):
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
