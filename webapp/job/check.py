"""Holds a job against the table of `webapp/job/shape.py`; `static/keeping/job-check.js` is the twin.

Whatever stands in a job that passes, no screen and no plan fails over it. Keys that are not known come first,
the others in the table's order, so that both languages name the same one.
"""

import math
import re
from collections import Counter
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any, NoReturn

from webapp.errors import JobFileError
from webapp.inputs.table import INPUTS
from webapp.job.shape import SAYS, Kind, shape
from webapp.quantities import bounds

SHAPE = shape()
ID = re.compile(r"[A-Za-z0-9_]{1,60}")
ENTRY_ID = re.compile(r"[A-Za-z0-9_-]{1,60}")
SWATCH = re.compile(r"#[0-9A-Fa-f]{6}")
AMOUNT = re.compile(r"[a-z][a-z0-9_]{0,59}")
MOMENT = re.compile(r"(2[01]\d\d)-(\d\d)-(\d\d)T(\d\d):(\d\d):(\d\d)\.\d{3}Z", re.ASCII)
LONGEST_QUOTED = 40
# A conversion leaves so much at a bound.
HAIR = 1e-9


@dataclass(frozen=True)
class _Job:
    """What is counted through a whole job: ids that are taken, and how many rows of each word there are."""

    ids: set[str] = field(default_factory=lambda: {"job"})
    rows: Counter[str] = field(default_factory=Counter)


def check(job: dict[str, Any]) -> None:
    """Refuse a job of this version in which anything is not as the table says, by a JobFileError."""
    _group_of(job, "job", "the job", _Job())


def refuse(what: str, **words: Any) -> NoReturn:
    """Raise a JobFileError with one of the table's sentences, its marks filled in."""
    if "where" in words:
        words["Where"] = words["where"][:1].upper() + words["where"][1:]
    raise JobFileError(SAYS[what].format(**words))


def quoted(text: str) -> str:
    """Return a file's own words as a sentence quotes them: the beginning alone of what is long."""
    return text if len(text) <= LONGEST_QUOTED else f"{text[:LONGEST_QUOTED]}…"


def is_whole(value: Any) -> bool:
    """Say whether a value is a whole number; true and false are none."""
    return isinstance(value, int) and not isinstance(value, bool)


def is_number(value: Any) -> bool:
    """Say whether a value is a number that can be reckoned with."""
    return isinstance(value, int | float) and not isinstance(value, bool) and math.isfinite(value)


def _group_of(group: dict[str, Any], name: str, where: str, job: _Job) -> None:
    keys, must = SHAPE[name]["keys"], SHAPE[name]["must"]
    _known(group, keys, where)
    for key, kind in keys.items():
        if key in group:
            KINDS[kind["is"]](group[key], kind, key, where, job)
        elif key in must:
            refuse("no_id" if key == "id" else "missing", key=key, where=where)


def _known(group: dict[str, Any], keys: Iterable[str], where: str) -> None:
    if strange := [key for key in group if key not in keys]:
        first = min(strange, key=lambda key: key.encode("utf-16-be", "surrogatepass"))
        refuse("unknown", key=quoted(first), where=where)


def _group(value: Any, kind: Kind, key: str, where: str, job: _Job) -> None:
    if not isinstance(value, dict):
        refuse("group", key=key, where=where)
    if kind["of"] == "plan":
        _group_of(value, "plan", f"the plan of {where}", _Job())
    else:
        _group_of(value, kind["of"], f'"{key}" of {where}', job)


def _rows(value: Any, kind: Kind, key: str, where: str, job: _Job) -> None:
    word = kind["word"]
    if not isinstance(value, list):
        refuse("list", key=key, where=where)
    if len(value) < kind["least"]:
        refuse("few", key=key, where=where)
    if len(value) > kind["most"]:
        refuse("many", where=where, count=len(value), words=f"{word}s", most=kind["most"])
    job.rows[word] += len(value)
    if job.rows[word] > kind["all"]:
        refuse("many_in_all", words=f"{word}s", most=kind["all"])
    for position, row in enumerate(value, 1):
        title = f"{word} {position} of {where}"
        if not isinstance(row, dict):
            refuse("row", where=title)
        _group_of(row, kind["of"], title, job)


def _entries(value: Any, kind: Kind, key: str, where: str, _job: _Job) -> None:
    if not isinstance(value, list):
        refuse("list", key=key, where=where)
    if len(value) > kind["most"]:
        refuse("many", where=where, count=len(value), words=key, most=kind["most"])
    own = _Job()
    for position, entry in enumerate(value, 1):
        title = f"entry {position} of {where}"
        if not isinstance(entry, dict):
            refuse("row", where=title)
        if "kind" not in entry:
            refuse("missing", key="kind", where=title)
        _word(entry["kind"], {"options": kind["kinds"]}, "kind", title, own)
        _group_of(entry, f"entry {entry['kind']}", title, own)


def _text(value: Any, kind: Kind, key: str, where: str, _job: _Job) -> None:
    if value is None:
        return
    if not isinstance(value, str):
        refuse("text", key=key, where=where)
    if len(value) > kind["most"]:
        refuse("long", key=key, where=where, most=kind["most"])


def _said(value: Any, kind: Kind, key: str, where: str, job: _Job) -> None:
    if value is None:
        refuse("text", key=key, where=where)
    _text(value, kind, key, where, job)


def _typed(value: Any, kind: Kind, key: str, where: str, job: _Job) -> None:
    if value is None or isinstance(value, str):
        _text(value, kind, key, where, job)
    elif isinstance(value, bool) or not isinstance(value, int | float):
        refuse("typed", key=key, where=where)
    elif not is_number(value):
        refuse("endless", key=key, where=where)


def _choice(value: Any, kind: Kind, key: str, where: str, job: _Job) -> None:
    if value is not None and value != "":
        _word(value, kind, key, where, job)


def _word(value: Any, kind: Kind, key: str, where: str, _job: _Job) -> None:
    if not isinstance(value, str):
        refuse("text", key=key, where=where)
    if value not in kind["options"]:
        options = ", ".join(kind["options"])
        refuse("option", key=key, where=where, value=quoted(value), options=options)


def _words(value: Any, kind: Kind, key: str, where: str, job: _Job) -> None:
    if not isinstance(value, list):
        refuse("list", key=key, where=where)
    if len(value) > len(kind["options"]):
        refuse("many", where=where, count=len(value), words=key, most=len(kind["options"]))
    for each in value:
        _word(each, kind, key, where, job)


def _flag(value: Any, _kind: Kind, key: str, where: str, _job: _Job) -> None:
    if value is not None and not isinstance(value, bool):
        refuse("flag", key=key, where=where)


def _id(value: Any, kind: Kind, key: str, where: str, job: _Job) -> None:
    if not isinstance(value, str) or not value:
        refuse("no_id", where=where)
    if not (ENTRY_ID if kind["is"] == "entry_id" else ID).fullmatch(value):
        refuse("id", where=where, value=quoted(value))
    if value in job.ids:
        refuse("one_id", value=value)
    job.ids.add(value)


def _own_id(value: Any, _kind: Kind, key: str, where: str, _job: _Job) -> None:
    if value is None or value == "":
        return
    if not isinstance(value, str):
        refuse("text", key=key, where=where)
    if not ID.fullmatch(value):
        refuse("id", where=where, value=quoted(value))


def _swatch(value: Any, _kind: Kind, key: str, where: str, _job: _Job) -> None:
    if value is not None and value != "" and not (isinstance(value, str) and SWATCH.fullmatch(value)):
        refuse("swatch", key=key, where=where)


def _moment(value: Any, _kind: Kind, key: str, where: str, _job: _Job) -> None:
    if not isinstance(value, str) or not _is_moment(value):
        refuse("moment", key=key, where=where)


def _is_moment(text: str) -> bool:
    found = MOMENT.fullmatch(text)
    try:
        return found is not None and bool(datetime(*map(int, found.groups())))  # type: ignore[arg-type]
    except ValueError:
        return False


def _whole(value: Any, kind: Kind, key: str, where: str, _job: _Job) -> None:
    if not is_whole(value) or not kind["least"] <= value <= kind["most"]:
        refuse("whole", key=key, where=where, least=kind["least"], most=kind["most"])


def _amounts(value: Any, kind: Kind, key: str, where: str, _job: _Job) -> None:
    if not isinstance(value, dict):
        refuse("group", key=key, where=where)
    title = f'"{key}" of {where}'
    _known(value, [name for name in value if AMOUNT.fullmatch(name)], title)
    for name, amount in value.items():
        least, most = _bounds_of(name, kind["most"])
        if not is_number(amount) or not least <= amount <= most:
            refuse("amount", key=name, where=title)


def _bounds_of(name: str, most_amount: float) -> tuple[float, float]:
    """Return what an amount may be: what may be typed for it, if it was typed once."""
    typed = bounds(INPUTS[name]) if name in INPUTS and INPUTS[name].kind != "choice" else (None, None)
    least, most = typed
    return (
        -most_amount if least is None else least - HAIR * abs(least),
        most_amount if most is None else most + HAIR * abs(most),
    )


KINDS: dict[str, Callable[[Any, Kind, str, str, _Job], None]] = {
    "group": _group,
    "rows": _rows,
    "entries": _entries,
    "text": _text,
    "said": _said,
    "typed": _typed,
    "choice": _choice,
    "word": _word,
    "words": _words,
    "flag": _flag,
    "id": _id,
    "entry_id": _id,
    "own_id": _own_id,
    "swatch": _swatch,
    "moment": _moment,
    "whole": _whole,
    "amounts": _amounts,
}
