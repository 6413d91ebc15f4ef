"""The faults of reading: what can be wrong with a file before its content is considered.

The reader and the project folder report by `fault`; the command `explain` prints an entry of `FAULTS`. An id is never
used again for something else.
"""

from __future__ import annotations

from dataclasses import dataclass

from specgen.findings import Finding, Place, Severity


@dataclass(frozen=True, slots=True)
class Fault:
    """One kind of fault in plain words: what is wrong, why it matters, how to put it right, and an example."""

    id: str
    title: str
    why: str
    remedy: str
    example: str
    severity: Severity = Severity.ERROR


def fault(id: str, what: str, place: Place) -> Finding:
    """The finding of this kind at this place; `what` tells the particular case.

    Raises KeyError for an id that is not in the table.
    """
    kind = FAULTS[id]
    return Finding(kind.id, kind.severity, place, "", what, kind.why, kind.remedy)


_QUOTE = "Put the whole value in quotes."
_SIGNS = "In YAML, the format of these files, some characters have a meaning of their own at the beginning of a value."

_TABLE = (
    Fault(
        "SRC001",
        "The file is too large",
        "A specification is small. A file over 1 MiB is usually something else saved under the wrong name.",
        "Take out what does not belong, or spread the content over several files in the same folder.",
        "products.yaml of 3 MiB: split it into products-primers.yaml and products-topcoats.yaml",
    ),
    Fault(
        "SRC002",
        "The file or folder cannot be opened",
        "What cannot be opened cannot be checked, and a document must not be issued on part of its sources.",
        "Check that it is there, that it is an ordinary file, and that you may read it.",
        "climate.yaml belongs to another user: ask for the right to read it",
    ),
    Fault(
        "SRC003",
        "A character is damaged",
        "The file is not saved as UTF-8, so characters such as µ, ° or é cannot be read reliably.",
        "Save the file as UTF-8 and retype the damaged characters.",
        "In the editor: Save as, encoding UTF-8",
    ),
    Fault(
        "SRC004",
        "The file is saved as UTF-16 or UTF-32",
        "Only UTF-8 is read, so that every tool and every person sees the same text.",
        "Save the file as UTF-8.",
        "In the editor: Save as, encoding UTF-8",
    ),
    Fault(
        "SRC005",
        "A control character",
        "It is not visible on the screen and cannot be printed, so it cannot be checked.",
        "Delete it and retype the text around it.",
        "name: Primer<07>   write   name: Primer",
    ),
    Fault(
        "SRC006",
        "An invisible character",
        "It takes up no space or reverses the writing direction, so the line differs from what is displayed.",
        "Delete it. Text copied from a web page or a chat often carries it: type the text by hand.",
        "dft: 60<U+200B> um   write   dft: 60 um",
    ),
    Fault(
        "SRC007",
        "A tab",
        "A tab is as wide as the editor likes, so the same file would appear nested differently on another screen.",
        "Use spaces: two for each level of indentation. A tab is allowed only inside quotes.",
        "<tab>dft: 60 um   write   two spaces, then dft: 60 um",
    ),
    Fault(
        "SRC008",
        "A line is too long",
        "A line over 2,000 characters cannot be read or compared by a person.",
        "Break the text into several lines; after `|` each line is kept as it stands.",
        "note: |\n  first line\n  second line",
    ),
    Fault(
        "SRC009",
        "More than one document in a file",
        "A line `---` begins another document and `...` ends one, so the rest of the file would easily be overlooked.",
        "Put the second part into a file of its own, or delete the line.",
        "a file with `---` in the middle: save the part below it as a second file",
    ),
    Fault(
        "SRC010",
        "An instruction to the YAML reader",
        "A line that begins with % changes how the file is read; these files are all read the same way.",
        "Delete the line.",
        "%YAML 1.1   delete it",
    ),
    Fault(
        "SRC011",
        "The file is empty",
        "An empty file adds nothing to the specification; perhaps it was not saved.",
        "Fill it or delete it.",
        "an empty climate.yaml: delete it, or write what it was meant to hold",
        Severity.NOTE,
    ),
    Fault(
        "SRC012",
        "The file does not begin with keys",
        "At the left margin every file has keys with their values, such as `product:`; only these state what the file is.",
        "Begin with a key, and indent the rest below it.",
        "- zinc primer   write   products:\n                          - zinc primer",
    ),
    Fault(
        "SRC013",
        "An anchor (&name)",
        "A value stored under a name and used elsewhere changes in two places at once, and only one of them is visible.",
        "Delete the anchor and write the value out where it is needed. If & belongs to the text, put it in quotes.",
        "film: &std 60 um   write   film: 60 um",
    ),
    Fault(
        "SRC014",
        "An alias (*name)",
        "The reader of the file cannot see the value that is meant, and it changes when the other place is changed.",
        "Write the value out. If * belongs to the text, put it in quotes.",
        "film: *std   write   film: 60 um",
    ),
    Fault(
        "SRC015",
        "A tag (!name)",
        "A tag tells a program how to interpret the value; here the value is always the text as written.",
        "Delete the tag. If ! belongs to the text, put it in quotes.",
        "count: !!int 3   write   count: 3",
    ),
    Fault(
        "SRC016",
        "A merge key (<<)",
        "It copies keys from elsewhere without showing them, so the line does not say what is specified.",
        "Write the keys out.",
        "<<: *defaults   write   dft: 60 um",
    ),
    Fault(
        "SRC017",
        "The same key twice",
        "Only one of the two can apply, and which one is not stated.",
        "Delete one of the two lines, or correct the name of one key.",
        "dft: 60 um\ndft: 80 um   keep one of them",
    ),
    Fault(
        "SRC018",
        "A key that is not text",
        "A key is a name followed by a colon; a list, a group of keys, or nothing cannot be a name.",
        "Write the key as a plain name on one line.",
        "? [top, coat]\n: 60 um   write   top_coat: 60 um",
    ),
    Fault(
        "SRC019",
        "A null value (null or ~)",
        "It is unclear whether the value is not known, not wanted, or forgotten.",
        "Leave the value empty, or delete the line. If it is meant as text, put it in quotes.",
        "thinner: null   write   thinner:   or leave the line out",
    ),
    Fault(
        "SRC020",
        "Nested too deeply",
        "More than 20 levels of indentation or brackets cannot be followed; no specification needs them.",
        "Reduce the number of levels.",
        "[[[[ ... ]]]]   write   one list",
    ),
    Fault(
        "SRC021",
        "Too many values in one file",
        "A file with more than 200,000 keys and values cannot be checked in reasonable time.",
        "Spread the content over several files.",
        "readings.yaml with ten years of readings: one file a year",
    ),
    Fault(
        "SRC022",
        "A value is too long",
        "A value over 4,000 characters does not fit any field of a document.",
        "Shorten it, or split it into several values.",
        "a whole method pasted into `note`: give each step its own entry",
    ),
    Fault(
        "SRC023",
        "The end of the value is read as a comment",
        "Everything after a space and # is a comment and is left out of the document.",
        "Quote the value if this belongs to it. If it is a comment, write a space after the #.",
        'order: PX #4410   write   order: "PX #4410"',
        Severity.NOTE,
    ),
    Fault(
        "SRC024",
        "No space after the colon",
        "Without a space after the colon the line is one piece of text, not a key with a value.",
        "Put one space after the colon. If it is text, put it in quotes.",
        "dft:60 um   write   dft: 60 um",
    ),
    Fault(
        "SRC025",
        "A value begins with > or |",
        "These characters start a text of several lines, so what follows them on the line is lost.",
        "Write it in words, or put the whole value in quotes.",
        'dft: >= 40 um   write   dft: min 40 um\nsign: "> 40"',
    ),
    Fault(
        "SRC026",
        "A value begins with a character reserved by YAML",
        _SIGNS,
        _QUOTE,
        'gloss: %60   write   gloss: "%60"',
    ),
    Fault(
        "SRC027",
        "A second colon in the value",
        "A colon followed by a space makes a key, and a value cannot be a key at the same time.",
        _QUOTE,
        'note: Attention: wet   write   note: "Attention: wet"',
    ),
    Fault(
        "SRC028",
        "A value begins with {{",
        "An opening brace begins a group of keys, so the braces would not reach the text.",
        _QUOTE,
        'title: {{ job }}   write   title: "{{ job }}"',
    ),
    Fault(
        "SRC029",
        "Text after the closing quote or bracket",
        "A value ends with its closing quote or bracket; what follows would be lost.",
        "Put the quotes around the whole value. A quotation mark within single quotes is written twice.",
        "dft: \"60\" um   write   dft: 60 um\nnote: 'it's wet'   write   note: \"it's wet\"",
    ),
    Fault(
        "SRC030",
        "A quote is not closed",
        "Everything down to the next quotation mark, perhaps many lines below, becomes part of the value.",
        "Put the closing quote at the end of the value. It must be the same mark as the opening one.",
        'note: "wet   write   note: "wet"',
    ),
    Fault(
        "SRC031",
        "A bracket is not closed",
        "Everything below becomes part of the brackets.",
        "Put the closing bracket: ] for [ and } for {. If it is meant as text, put the value in quotes.",
        "[60 um, 80 um   write   [60 um, 80 um]",
    ),
    Fault(
        "SRC032",
        "A backslash without a meaning",
        "Within double quotes a backslash begins a code such as \\n; this is not one of them.",
        "Use single quotes, or write the backslash twice.",
        "\"C:\\paint\"   write   'C:\\paint'",
    ),
    Fault(
        "SRC033",
        "Wrong indentation",
        "The indentation of a line shows what it belongs to; this line matches nothing above it.",
        "Line it up with the lines it belongs to: the same number of spaces in front.",
        "film:\n    min: 40 um\n  max: 60 um   write min and max in one column",
    ),
    Fault(
        "SRC034",
        "List entries and keys mixed",
        "One key contains either a list, each entry with `- `, or a group of keys, not both.",
        "Make all of them list entries, or all of them keys. Begin a list on the line below its key.",
        "layers:\n  - primer\n  top: 60 um   write   - top",
    ),
    Fault(
        "SRC035",
        "A line without a colon",
        "A line here must be a key with a colon; this one has no key.",
        "Put the colon after the key, or `- ` before a list entry, or indent it if it continues the text above.",
        "film 60 um   write   film: 60 um",
    ),
    Fault(
        "SRC036",
        "The line cannot be understood",
        "From here on the file cannot be read reliably.",
        "Look at this line and the one above for a colon, quote, bracket or space. Text with special characters is best put in quotes.",
        'note: "anything can stand here"',
    ),
    Fault(
        "SRC037",
        "More faults than can be listed",
        "After so many faults the others are mostly consequences of them.",
        "Correct what is listed and check again.",
        "a file in another format saved as .yaml",
    ),
    Fault(
        "SRC038",
        "A link points outside the folder",
        "A file outside is not kept with the specification and may change unnoticed.",
        "Copy the file into the folder.",
        "climate.yaml linked to a network drive: copy it",
    ),
    Fault(
        "SRC039",
        "Too many files in the folder",
        "A project has at most 5,000 files. More of them means that the wrong folder was named.",
        "Name the folder of the project, not one above it.",
        "specgen check .   in the folder of one project",
    ),
    Fault(
        "SRC040",
        "The files of the folder are too large in total",
        "A project has at most 64 MiB. More means that the wrong folder was named or that it contains something else.",
        "Name the folder of the project, or take out what does not belong.",
        "years of logged readings: keep them in a folder of their own",
    ),
    Fault(
        "SRC041",
        "A space that is not an ordinary space",
        "It looks like a space but is another character, so the line is not nested or divided as it appears.",
        "Delete it and type an ordinary space.",
        "dft:<U+00A0>60 um   write   dft: 60 um",
    ),
    Fault(
        "SRC042",
        "The brackets cannot be read",
        "[ and ] enclose values separated by commas, { and } keys with values separated by commas.",
        "Put the missing comma, colon or value, or write the list below its key, one entry a line; a text with a colon and a "
        "blank goes in quotes.",
        "[60 um, , 80 um]   write   [60 um, 80 um]",
    ),
    Fault(
        "SRC043",
        "A file name that cannot be printed",
        "A finding must name its file, and this name contains characters that cannot be shown.",
        "Give the file a name of letters, digits, - and _.",
        "pri<07>mer.yaml   write   primer.yaml",
    ),
    Fault(
        "SRC044",
        "The files of the folder contain too much in total",
        "A project has at most 1,250,000 keys and values, some 1,200 large jobs. More would take more memory than a machine may have.",
        "Divide the folder: a project for each customer or year.",
        "jobs of ten years in one folder: a folder a year",
    ),
)

FAULTS: dict[str, Fault] = {entry.id: entry for entry in _TABLE}
