"""The job file: one job as JSON, checked before it is used; `static/keeping/transfer.js` is the twin."""

import json
import re
from typing import Any, NoReturn

from webapp.job.check import check, is_whole, refuse
from webapp.job.lifts import VERSION, lift
from webapp.job.shape import DEEPEST, FORMAT, LARGEST

MOST_VERSIONS = 1_000_000
# From here on a phone's numbers are no longer exact, so none is kept as a whole one.
EXACT = 2**53
LONE_SURROGATE = re.compile("[\ud800-\udfff]")


def read_job(content: str | bytes) -> dict[str, Any]:
    """Read a job file; a JobFileError says in a sentence what is wrong with it and what to do.

    Quantities are kept as they were typed, even unreadable ones: the sheet says at the field what is wrong.
    """
    if len(content) > LARGEST:
        refuse("large")
    try:
        text = content.decode("utf-8-sig") if isinstance(content, bytes) else content
    except UnicodeDecodeError:
        refuse("no_json")
    if is_too_deep(text):
        refuse("deep", deepest=DEEPEST)
    try:
        job = json.loads(text, parse_int=_number, parse_float=_number, parse_constant=_no_number)
    except json.JSONDecodeError:
        refuse("no_json")
    return check_job(_wholesome(job) if "\\ud" in text.lower() else job)


def check_job(job: Any) -> dict[str, Any]:
    """Check a job's format, version and all that is in it; return it as one of this version."""
    if not isinstance(job, dict) or job.get("format") != FORMAT:
        refuse("format", format=FORMAT)
    version: Any = job.get("version")
    if not is_whole(version) or not 1 <= version <= MOST_VERSIONS:
        refuse("no_version")
    if version > VERSION:
        refuse("too_new", version=version, newest=VERSION)
    job = lift(job)
    check(job)
    return job


def is_too_deep(text: str) -> bool:
    """Say whether lists and groups stand inside each other deeper than any job's, be the text JSON or not.

    >>> is_too_deep("[" * 31), is_too_deep('"' + "[" * 31 + '"')
    (True, False)
    """
    depth, in_text, passed = 0, False, -1
    for mark in re.finditer(r'[\[\]{}"\\]', text):
        sign, place = mark[0], mark.start()
        if place == passed:
            continue
        if in_text:
            passed = place + 1 if sign == "\\" else passed
            in_text = sign != '"'
        elif sign == '"':
            in_text = True
        elif sign in "[{":
            depth += 1
            if depth > DEEPEST:
                return True
        elif sign in "]}":
            depth -= 1
    return False


def _number(text: str) -> int | float:
    """Read a number as a phone does, which has but one kind: 2.0 is 2, and of 400 digits none is kept."""
    value = float(text)
    return int(value) if abs(value) < EXACT and value == int(value) else value


def _no_number(_name: str) -> NoReturn:
    refuse("no_json")


def _wholesome(value: Any) -> Any:
    """Put the sign for a broken letter in place of each half of one, which could not be written out."""
    if isinstance(value, str):
        return LONE_SURROGATE.sub("\ufffd", value)
    if isinstance(value, list):
        return [_wholesome(each) for each in value]
    if isinstance(value, dict):
        return {_wholesome(key): _wholesome(each) for key, each in value.items()}
    return value
