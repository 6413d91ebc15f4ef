"""Who issues a document, for whom, and whom to call, as one line each. Called by the views of every document."""

from __future__ import annotations

from dataclasses import dataclass

from specgen.model.control import Contact
from specgen.model.project import Party


@dataclass(frozen=True, slots=True, kw_only=True)
class PartyView:
    name: str
    address: str
    contact: str


def party(stated: Party | None) -> PartyView:
    """A maker or customer as printed; without a name where there is none."""
    if stated is None:
        return PartyView(name="", address="", contact="")
    return PartyView(name=stated.name, address=stated.address or "", contact=contact_line(stated.contact))


def contact_line(contact: Contact | None) -> str:
    """Name, telephone, mail and hours; empty where nobody is named."""
    if contact is None:
        return ""
    return ", ".join(part for part in (contact.name, contact.phone, contact.email, contact.hours) if part)
