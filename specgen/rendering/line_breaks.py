"""Where no line may end: within a grade, a date, the number of a document, or between a figure and its unit.

Called by `environment` with a finished page. In print the blank itself is changed; from a screen text is copied and searched, so that
there the signs stay and an element keeps them together.
"""

from __future__ import annotations

import re

from specgen.units.kinds import UNITS

NO_BREAK, _MAY_BREAK = "\N{NO-BREAK SPACE}", "\N{ZERO WIDTH SPACE}"

# a preparation grade is never broken over two lines, joined precautionary statements between two of them alone
_GRADED = r"\b(?:(?:Sa|St) [1-4](?: 1/2)?|SP \d{1,2}|P Ma)\b"
_GRADE, _JOINED = re.compile(_GRADED), re.compile(r"\bP\d{3}(?:\+P\d{3})+")
# the irradiance of a test is in no unit of the sources
_ALL_SIGNS = {unit.sign for unit in UNITS.values() if not unit.many} | {"W/m²"}
_SIGNS = "|".join(re.escape(sign) for sign in sorted(_ALL_SIGNS))
_BARE = r"\d+(?![.,]?\d)(?:[;,.<)]|$)"
_BEFORE = rf"(?<=\bISO) (?=\d)|(?<=\b[EU]N) (?=\d)|(?<=\bat most) (?={_BARE})|(?<=\bat least) (?={_BARE})"
# a figure of the author's own text and the unit behind it, ISO, EN or UN and its number, a limit and the bare figure that ends it; what
# stands in a tag is passed over
_FIGURE = re.compile(rf"<[^>]*>|(?<=\d) (?=(?:{_SIGNS})(?!\w))|{_BEFORE}")
# a unit with a slash, after which a line may end; a drawing and the head of a page hold no element for it
_SLASHED = "|".join(re.escape(sign) for sign in sorted(_ALL_SIGNS) if "/" in sign)
_NO_TEXT = r"<head>.*?</head>|<svg\b.*?</svg>|<[^>]*>"
_PER = re.compile(rf"{_NO_TEXT}|(?<=\d){NO_BREAK}(?:{_SLASHED})(?!\w)", re.DOTALL)
# an id in capitals, which a narrow column would break at its hyphen
_ID = r"(?<![\w-])[A-Z][A-Z\d]{0,7}-[A-Z]{1,7}\d?(?![\w-])"
_IDS = re.compile(rf"{_NO_TEXT}|{_ID}", re.DOTALL)
_DAY = r"(?<![\w-])\d{4}-\d\d-\d\d(?: \d\d:\d\d)?(?![\w-])"
_PHONE = r"(?<!\w)\+\d{1,3}(?: \d{2,5}){1,4}\b"
_NUMBER = r"(?<![\w-])[A-Z][A-Z\d]{0,7}(?:-\d{1,6}){1,2}(?:/\d{2,4})?(?![\w-])"
_MEASURED = rf"(?<![\w.,])\d+(?:[.,]\d+)?[ {NO_BREAK}](?:{_SIGNS})(?!\w)"
_STANDARD = rf"\b(?:ISO|EN|UN)[ {NO_BREAK}]\d+(?:-\d+)*\b"
# the list of contents lays out its entries by their elements
_WHOLE = re.compile(
    rf"<nav\b.*?</nav>|{_NO_TEXT}|{_DAY}|{_PHONE}|{_NUMBER}|{_ID}|{_GRADED}|{_STANDARD}|{_MEASURED}", re.DOTALL
)


def unbroken(page: str) -> str:
    """The page as printed, with its grades and ids kept in one line, and each figure with its unit; its joined statements break between
    two of them alone.
    """
    page = _FIGURE.sub(lambda found: NO_BREAK if found[0] == " " else found[0], page)
    page = _PER.sub(_in_one_line, page)
    page = _IDS.sub(_in_one_line, page)
    page = _GRADE.sub(lambda grade: grade[0].replace(" ", NO_BREAK), page)
    return _JOINED.sub(lambda codes: codes[0].replace("+", f"+{_MAY_BREAK}"), page)


def kept_whole(page: str) -> str:
    """The page as read on a screen: dates, numbers to call, those of documents, grades, standards and figures with their unit each
    in one line."""
    return _WHOLE.sub(_in_one_line, page)


def _in_one_line(found: re.Match[str]) -> str:
    return found[0] if found[0][0] == "<" else f'<span class="one-line">{found[0]}</span>'
