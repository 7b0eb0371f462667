"""The shape of a job file, in one table: every group with its keys, and what may stand behind each.

`webapp/job/check.py` holds a job against it, and `static/keeping/job-check.js` the printed copy: what either
refuses, and the sentence, comes from here. A key that a landing adds gets its kind here.

A kind is a dictionary: `is` names the function that checks it, the rest is what that function asks.
"""

from typing import Any

from webapp.bench.stages import STAGES
from webapp.bench.walk import ENTRIES, TAPS
from webapp.inputs.entry import Input
from webapp.inputs.table import INPUTS
from webapp.job.lifts import VERSION
from webapp.kinds import JOB_UNITS
from webapp.sheet.levels import LEVELS, MOST_RECORDED, held

Kind = dict[str, Any]
Group = dict[str, Any]

FORMAT = "sixteenth-job"
LARGEST = 5_000_000
DEEPEST = 30
"""How many lists and groups stand inside each other at most: a job with cups has thirteen."""

LONGEST_TEXT = 400
MOST_AMOUNT = 1e12
"""No frozen amount is greater: so many seconds still end at a moment that a calendar has."""

MOST_NUMBER = 1000
MOST_ENTRIES = 10_000
MOST_DROPS = 1_000_000_000

SAYS = {
    "format": 'This is no job file: its "format" is not "{format}". Choose a file saved as a job file.',
    "no_version": 'The job file has no "version". Choose a file saved as a job file.',
    "too_new": (
        "This job file is of version {version}, and this app reads up to version {newest}. "
        "Update the app, then open the file again."
    ),
    "large": "This file is larger than 5 MB, and a job file is far smaller. Choose the file of one job.",
    "no_json": "This is no job file: it is not JSON. Choose a file that was saved as a job file.",
    "deep": (
        "This is no job file: it has lists inside lists, more than {deepest} deep. "
        "Choose a file that was saved as a job file."
    ),
    "unknown": '"{key}" in {where} is not known here. Take it out of the file, then open it again.',
    "missing": '{Where} has no "{key}". Save the job again and open that file.',
    "no_id": '{Where} has no "id". Give every row an id of its own.',
    "one_id": 'Two rows of the job file have the id "{value}". Give every row an id of its own.',
    "id": (
        'The id "{value}" of {where} has other signs than letters, digits and _, or more than 60. '
        "Give the row another id."
    ),
    "group": '"{key}" of {where} is not a group of fields. Save the job again and open that file.',
    "list": '"{key}" of {where} is not a list of rows. Save the job again and open that file.',
    "row": "{Where} is not a group of fields. Save the job again and open that file.",
    "few": '"{key}" of {where} has not the one row that it needs. Save the job again and open that file.',
    "many": "{Where} has {count} {words}, and at most {most} can be worked with. Take some out of the file.",
    "many_in_all": (
        "The job has more than {most} {words}, and no more can be worked with. Take some out of the file."
    ),
    "text": '"{key}" in {where} is not text. Put it in quotation marks, then open the file again.',
    "long": '"{key}" in {where} is longer than {most} letters. Shorten it, then open the file again.',
    "typed": '"{key}" in {where} is neither text nor a number. Write it as text, such as "12 3/8 in".',
    "endless": '"{key}" in {where} is too large to be a number. Check it, then open the file again.',
    "option": '"{key}" in {where} is "{value}", which is not known here. Write one of: {options}.',
    "flag": '"{key}" in {where} is neither true nor false. Write one of the two.',
    "swatch": '"{key}" in {where} is no color in six digits. Write it like "#0f6b5c".',
    "moment": (
        '"{key}" in {where} is no moment between the years 2000 and 2200. '
        'Write it like "2025-11-14T10:40:00.000Z".'
    ),
    "whole": '"{key}" in {where} is not a whole number from {least} to {most}. Save the job again.',
    "amount": '"{key}" in {where} is no amount that a cup can have. Save the job again and open that file.',
}
"""What is said of a file that is refused; `{Where}` is `{where}` with a capital."""

FULL = {
    "colour": "A job holds at most {most} colors. Begin another job.",
    "face": "A color holds at most {most} faces. Begin another color.",
    "opening": "A face holds at most {most} cut-outs. Measure its area and choose the shape that is known.",
    "job": "A job holds at most {most} {words}. Begin another job.",
    "record": "The record of a job holds at most {most} cups. Begin another job.",
}
"""What is said where a row more was asked for than there may be."""


def _text() -> Kind:
    return {"is": "text", "most": LONGEST_TEXT}


def _whole(least: int, most: int) -> Kind:
    return {"is": "whole", "least": least, "most": most}


def _word(options: tuple[str, ...] | list[str]) -> Kind:
    return {"is": "word", "options": list(options)}


ENTRY_KEYS: dict[str, Kind] = {
    "stage": _word(TAPS),
    "count": _whole(0, MOST_DROPS),
    "of": {"is": "said", "most": LONGEST_TEXT},
    "says": {"is": "said", "most": LONGEST_TEXT},
}
"""What may stand behind the keys that only some kinds of entry have."""


def _group(name: str) -> Kind:
    return {"is": "group", "of": name}


def _rows(of: str, word: str, most: int, most_in_job: int | None = None, least: int = 0) -> Kind:
    return {"is": "rows", "of": of, "word": word, "least": least, "most": most, "all": most_in_job or most}


def _typed(each: Input) -> Kind:
    if each.kind == "choice":
        return {"is": "choice", "options": [option for option, _ in each.options]}
    return {"is": "typed", "most": LONGEST_TEXT}


def _inputs(names_of: Any) -> dict[str, Kind]:
    return {name: _typed(each) for name, each in INPUTS.items() if names_of(each)}


def _section(section: str) -> Group:
    keys = {"name": _text()} if section == "card" else {}
    return {"keys": {**keys, **_inputs(lambda each: each.section == section)}, "must": []}


def _row(level: str, records: dict[str, Kind]) -> Group:
    marks = {mark: {"is": mark} for mark in LEVELS[level].marks}
    rows = {
        LEVELS[below].rows: _rows(below, LEVELS[below].word, LEVELS[below].most, LEVELS[below].most_in_job)
        for below in held(level)
    }
    own = _inputs(lambda each: level in each.levels)
    return {"keys": {"id": {"is": "id"}, "name": _text(), **marks, **own, **rows, **records}, "must": ["id"]}


def _job(colours: Kind) -> Group:
    return {
        "keys": {
            "format": _word([FORMAT]),
            "version": _whole(VERSION, VERSION),
            "id": {"is": "own_id"},
            "name": _text(),
            "example": {"is": "flag"},
            "units": _group("units"),
            **{section: _group(section) for section in LEVELS["job"].sections},
            "colours": colours,
        },
        "must": ["format", "version"],
    }


def _colours(of: str, least: int, most: int) -> Kind:
    return _rows(of, LEVELS["colour"].word, most, least=least)


def _entry(kind: str) -> Group:
    own = {key: ENTRY_KEYS[key] for key in ENTRIES[kind]}
    common = {"id": {"is": "entry_id"}, "at": {"is": "moment"}, "kind": _word([kind])}
    return {"keys": {**common, **own}, "must": [key for key in (*common, *own) if key != "count"]}


def shape() -> dict[str, Group]:
    """Return every group of a job file: its `keys`, each with its kind, and those that it `must` have.

    >>> shape()["colour"]["keys"]["swatch"], shape()["entry back"]["must"]
    ({'is': 'swatch'}, ['id', 'at', 'kind', 'of'])
    """
    recorded = _rows("cup", "cup", MOST_RECORDED)
    rows = {level: _row(level, {}) for level in LEVELS if level != "colour" and LEVELS[level].rows}
    return {
        "job": _job(_colours("colour", 0, LEVELS["colour"].most)),
        "units": {"keys": {kind: _word(units) for kind, units in JOB_UNITS.items()}, "must": []},
        **{section: _section(section) for section in LEVELS["job"].sections},
        "colour": _row("colour", {"cups": recorded}),
        **rows,
        "cup": {
            "keys": {
                "id": {"is": "id"},
                "coat": _whole(1, MOST_NUMBER),
                "number": _whole(1, MOST_NUMBER),
                "begun": {"is": "moment"},
                "amounts": {"is": "amounts", "most": MOST_AMOUNT},
                "plan": _group("plan"),
                "stages": {**_word([stage.name for stage in STAGES]), "is": "words"},
                "entries": {"is": "entries", "kinds": list(ENTRIES), "most": MOST_ENTRIES},
            },
            "must": ["id", "coat", "number", "begun", "amounts", "plan", "stages", "entries"],
        },
        **{f"entry {kind}": _entry(kind) for kind in ENTRIES},
        "plan": _job(_colours("planned colour", 1, 1)),
        "planned colour": _row("colour", {"cups": _rows("cup", "cup", 0)}),
    }
