"""The document itself: what it can print, and the files it becomes."""

from specgen.rules.kit import Concern, family

family(__name__, "DOC", Concern.DOCUMENT, sentences=True)
