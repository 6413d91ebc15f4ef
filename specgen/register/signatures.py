"""Detached signatures made with OpenSSH, checked with OpenSSH (`ssh-keygen -Y`). Called by `approvals` and by verifying.

The program signs nothing and sees no private key. Whose key is whose says the project's `allowed_signers` file (ssh-keygen(1)).
"""

from __future__ import annotations

import os
import re
import subprocess
import tempfile
from collections.abc import Sequence
from pathlib import Path
from shlex import quote

from specgen.register.failure import RegisterError

NAMESPACE = "specgen-approval"
SIGNATURE_LIMIT = 64 * 1024
_SECONDS = 30
_KEY = re.compile(r"key (SHA256:[A-Za-z0-9+/=]+)")


def signing_command(file: str) -> str:
    """What whoever approves types to sign the file; the signature comes to stand beside it as `FILE.sig`."""
    return f"ssh-keygen -Y sign -n {NAMESPACE} -f ~/.ssh/id_ed25519 {quote(file)}"


def signer_of(text: bytes, signature: bytes, allowed: bytes, time: str) -> str:
    """The principal of `allowed` whose key signed the text and was allowed to at `time` (UTC, `2026-11-25T16:02:03Z`).

    Raises RegisterError where no such key did.
    """
    then = f"verify-time={re.sub('[^0-9]', '', time)}"
    with tempfile.TemporaryDirectory(prefix="specgen-") as held:
        signed, listed = Path(held, "signature"), Path(held, "allowed_signers")
        signed.write_bytes(signature)
        listed.write_bytes(allowed)
        found = _run(["-Y", "find-principals", "-s", str(signed), "-f", str(listed), "-O", then], text)
        who = found.stdout.decode("utf-8", "replace").splitlines()
        if found.returncode or not who:
            raise RegisterError("its signature is by none of the signers allowed at its time")
        checked = _run(
            ["-Y", "verify", "-f", str(listed), "-I", who[0], "-n", NAMESPACE, "-s", str(signed), "-O", then], text
        )
        if checked.returncode:
            raise RegisterError("its signature does not fit its text")
        return who[0]


def key_of(text: bytes, signature: bytes) -> str:
    """The fingerprint of the key that signed the text, whoever's it is. Raises RegisterError where the signature does not fit."""
    with tempfile.TemporaryDirectory(prefix="specgen-") as held:
        signed = Path(held, "signature")
        signed.write_bytes(signature)
        checked = _run(["-Y", "check-novalidate", "-n", NAMESPACE, "-s", str(signed)], text)
        found = _KEY.search(checked.stdout.decode("utf-8", "replace"))
        if checked.returncode or found is None:
            raise RegisterError("its signature does not fit its text")
        return found[1]


def _run(arguments: Sequence[str], text: bytes) -> subprocess.CompletedProcess[bytes]:
    try:
        return subprocess.run(
            ["ssh-keygen", *arguments],
            input=text,
            capture_output=True,
            timeout=_SECONDS,
            check=False,
            env={**os.environ, "TZ": "UTC"},
        )
    except FileNotFoundError:
        raise RegisterError("ssh-keygen, which checks signatures, was not found; install OpenSSH") from None
    except (OSError, subprocess.TimeoutExpired) as error:
        raise RegisterError(f"ssh-keygen, which checks signatures, did not answer: {error}") from error
