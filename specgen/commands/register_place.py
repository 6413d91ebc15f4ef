"""The folder of the sources and the register beside them, on the command line. Called by the commands that write or read a register."""

from __future__ import annotations

import argparse
from pathlib import Path

from specgen.commands.outcome import CannotRunError
from specgen.model.parse import Loaded
from specgen.register.history import History
from specgen.register.names import REGISTER
from specgen.source.characters import printable_name
from specgen.source.project import find_project


def declare_place(parser: argparse.ArgumentParser) -> None:
    """--path and --register."""
    parser.add_argument("--path", metavar="PATH", default=".", help="folder of the sources (this folder if left out)")
    declare_register(parser)


def declare_register(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--register",
        metavar="DIR",
        help=f"folder of the register (`{REGISTER}` in the folder of the sources if left out)",
    )


def declare_receipt(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--receipt",
        metavar="FILE",
        help="write a receipt of the register as it then stands, to be kept elsewhere; it replaces an older receipt",
    )


def receipt_written(arguments: argparse.Namespace, register: Path) -> str:
    """What was written by the option, or how to come by a receipt: what was added last is lost unseen without one."""
    from specgen.commands.targets import write_file
    from specgen.register.receipt import is_receipt, receipt

    if arguments.receipt is None:
        return (
            "Keep a receipt outside the register (`specgen register receipt FILE`): the loss of the newest record shows by "
            "it alone.\n"
        )
    file = Path(arguments.receipt)
    write_file(file, receipt(register), is_receipt)
    return f"{printable_name(file.as_posix())} written\n"


def project(arguments: argparse.Namespace) -> Path:
    """The folder of the sources. Raises CannotDoError where there is none."""
    if not arguments.path:
        raise CannotRunError("--path is empty; name the folder of the sources")
    return find_project(Path(arguments.path))


def of_range(loaded: Loaded) -> list[History]:
    """What stands in the register of the shared range; nothing where there is no range, or no register beside it."""
    from specgen.register.folder import histories

    place = loaded.range.folder / REGISTER if loaded.range is not None else None
    return histories(place) if place is not None and place.is_dir() else []


def register_of(arguments: argparse.Namespace, folder: Path) -> Path:
    if arguments.register is None:
        return folder / REGISTER
    if not arguments.register:
        raise CannotRunError("--register is empty; name the folder of the register")
    return Path(arguments.register)
