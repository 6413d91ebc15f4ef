"""`specgen verify`: is a file what was issued, and may it still be worked to?"""

from __future__ import annotations

import argparse
from pathlib import Path

from specgen.commands.outcome import DONE, REFUSED, CannotRunError, Outcome
from specgen.register.json_text import read_bytes
from specgen.report.lines import one_line

ABOUT = (
    "Tell whether a file is an issued document and still in force. Only the register can say so; without it the file is "
    "compared with the certificate it carries, which proves no origin. Nothing is written."
)


def declare(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="a document that was issued; a PDF, where there is no register")
    parser.add_argument("--register", metavar="DIR", help="folder of the register to ask")
    parser.add_argument(
        "--allowed-signers",
        metavar="FILE",
        help="whose key is whose, to name the signers of approvals (the format of OpenSSH's allowed signers)",
    )


def run(arguments: argparse.Namespace) -> Outcome:
    from specgen.register.issued_file import verify

    allowed = read_bytes(Path(arguments.allowed_signers)) if arguments.allowed_signers else None
    if arguments.register == "":
        raise CannotRunError("--register is empty; name the folder of the register")
    verdict = verify(
        Path(arguments.file), Path(arguments.register) if arguments.register is not None else None, allowed
    )
    return Outcome("".join(f"{one_line(line)}\n" for line in verdict.lines), DONE if verdict.good else REFUSED)
