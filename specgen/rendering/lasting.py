"""The last touches to a PDF before its bytes are written, so that it can be archived and read aloud for decades.

Called by `pdf`, which hands over the document tree the typesetter has built (a `pydyf.PDF`). The typesetter makes one
promise in a file, the archival one (ISO 19005-3, level A); that of accessibility (ISO 14289-1) is added here, with what
both ask for and the typesetter leaves open. Nothing here reads a clock or draws at random.
"""

from __future__ import annotations

import hashlib
import re
from collections import Counter
from collections.abc import Sequence
from datetime import UTC, datetime
from typing import Any

import pydyf  # type: ignore[import-untyped]  # ships no types

from specgen.rendering.attachments import Attachment
from specgen.rendering.failure import RenderError

UNDATED = datetime(2000, 1, 1, tzinfo=UTC)
"""The day attachments of an undated document carry: programs look for one there, and a clock would change the bytes."""

# ISO 14289-1, clause 5: the identification. ISO 19005-3, clause 6.6.2.3: a schema that standard does not know is described
# beside it, or it may not stand there.
_SECOND_PROMISE = b"""\
<rdf:Description rdf:about="" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/"><pdfuaid:part>1</pdfuaid:part></rdf:Description>
<rdf:Description rdf:about="" xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/"
 xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#" xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
<pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
<pdfaSchema:schema>Identification of the accessibility standard</pdfaSchema:schema>
<pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
<pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
<pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
<pdfaProperty:name>part</pdfaProperty:name>
<pdfaProperty:valueType>Integer</pdfaProperty:valueType>
<pdfaProperty:category>internal</pdfaProperty:category>
<pdfaProperty:description>Part of the standard</pdfaProperty:description>
</rdf:li></rdf:Seq></pdfaSchema:property>
</rdf:li></rdf:Bag></pdfaExtension:schemas>
</rdf:Description>
"""
_END_OF_METADATA = b"</rdf:RDF>"

# no folder, no drive, nothing hidden: a reader saves the file under this name
_FILE_NAME = re.compile(r"[A-Za-z0-9_][A-Za-z0-9._-]*")
_MEDIA_TYPE = re.compile(r"[a-z]+/[a-z0-9.+-]+")


def in_utc(moment: datetime) -> datetime:
    """The same moment in UTC, to the second. Raises RenderError for one that names no time zone."""
    if moment.tzinfo is None:
        raise RenderError(f"The time {moment.isoformat()} of the document names no time zone. Give it in UTC.")
    return moment.astimezone(UTC).replace(microsecond=0)


def declare_accessible(tree: Any) -> None:
    """Add the second promise to the metadata; it must stand in the one description there is, not in one of its own."""
    (metadata,) = (one for one in tree.objects if _is_stream(one, "/Metadata"))
    text = b"".join(metadata.stream)
    if text.count(_END_OF_METADATA) != 1:
        raise RenderError("The typesetter wrote its metadata in another form than the one known; pin its version.")
    metadata.stream = [text.replace(_END_OF_METADATA, _SECOND_PROMISE + _END_OF_METADATA)]


def embed(tree: Any, attachments: Sequence[Attachment], dated: datetime | None) -> None:
    """Put the attachments into the file, each once, associated with the whole document: ISO 32000-1, clause 7.11.4.

    Raises RenderError for two of one name, a name that is not that of a file in no folder, and a media type that is none.
    """
    _refuse_unfit(attachments)
    held = pydyf.Array()
    associated = pydyf.Array()
    # Names stand in a sorted tree; readers search it by halving.
    for attachment in sorted(attachments, key=lambda one: one.name):
        specification = _file_specification(tree, attachment, in_utc(dated) if dated else UNDATED)
        held.extend([pydyf.String(attachment.name), specification.reference])
        associated.append(specification.reference)
    if attachments:
        tree_of_names = pydyf.Dictionary({"Names": held})
        tree.add_object(tree_of_names)
        tree.catalog.setdefault("Names", pydyf.Dictionary())["EmbeddedFiles"] = tree_of_names.reference
        tree.catalog["AF"] = associated


def _refuse_unfit(attachments: Sequence[Attachment]) -> None:
    for name, times in Counter(attachment.name for attachment in attachments).items():
        if times > 1:
            raise RenderError(f"{times} attachments are named {name!r}. Give each a name of its own.")
        if not _FILE_NAME.fullmatch(name):
            raise RenderError(f"The attachment name {name!r} is not a plain file name. Use letters, digits and - . _")
    for attachment in attachments:
        if not _MEDIA_TYPE.fullmatch(attachment.media_type):
            raise RenderError(f"The media type {attachment.media_type!r} is none. Write it as in “application/json”.")


def _file_specification(tree: Any, attachment: Attachment, moment: datetime) -> Any:
    date = pydyf.String(moment.strftime("D:%Y%m%d%H%M%SZ"))
    content = pydyf.Stream(
        [attachment.data],
        pydyf.Dictionary(
            {
                "Type": "/EmbeddedFile",
                "Subtype": "/" + attachment.media_type.replace("/", "#2f"),
                "Params": pydyf.Dictionary(
                    {
                        # what the standard names for it (ISO 32000-1, table 46); nothing is trusted to it
                        "CheckSum": f"<{hashlib.md5(attachment.data, usedforsecurity=False).hexdigest()}>",
                        "Size": len(attachment.data),
                        "CreationDate": date,
                        "ModDate": date,
                    }
                ),
            }
        ),
        compress=True,
    )
    tree.add_object(content)
    specification = pydyf.Dictionary(
        {
            "Type": "/Filespec",
            "F": pydyf.String(attachment.name),
            "UF": pydyf.String(attachment.name),
            "EF": pydyf.Dictionary({"F": content.reference, "UF": content.reference}),
            "Desc": pydyf.String(attachment.description),
            "AFRelationship": f"/{attachment.relationship}",
        }
    )
    tree.add_object(specification)
    return specification


def _is_stream(one: Any, kind: str) -> bool:
    return isinstance(one, pydyf.Stream) and one.extra.get("Type") == kind
