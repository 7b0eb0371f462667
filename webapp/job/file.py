"""The job file: one job as JSON, checked before it is used; `static/keeping/transfer.js` is the twin."""

import json
from typing import Any, NoReturn

from webapp.bench.stages import STAGES
from webapp.bench.walk import ENTRIES, TAPS
from webapp.errors import JobFileError
from webapp.inputs.table import INPUTS
from webapp.job.lifts import VERSION, lift
from webapp.kinds import JOB_UNITS
from webapp.sheet.levels import LEVELS, held, row_keys

FORMAT = "sixteenth-job"
LARGEST = 5_000_000
LONGEST_TEXT = 400
STAGE_NAMES = [stage.name for stage in STAGES]

JOB_KEYS = (
    "format",
    "version",
    "id",
    "name",
    "example",
    "units",
    *LEVELS["job"].sections,
    *(LEVELS[level].rows for level in held("job")),
)
CUP_KEYS = (
    "id",
    "coat",
    "number",
    "begun",
    "amounts",
    "plan",
    "stages",
    "entries",
    "drops",
    "ready",
    "sequence",
)


def read_job(content: str | bytes) -> dict[str, Any]:
    """Read a job file; a JobFileError says in a sentence what is wrong with it and what to do.

    Quantities are kept as they were typed, even unreadable ones: the sheet says at the field what is wrong.
    """
    if len(content) > LARGEST:
        _refuse("This file is larger than 5 MB, and a job file is far smaller. Choose the file of one job.")
    try:
        text = content.decode("utf-8-sig") if isinstance(content, bytes) else content
        job = json.loads(text, parse_constant=_refuse_constant)
    except (UnicodeDecodeError, json.JSONDecodeError, RecursionError) as error:
        raise JobFileError(
            "This is no job file: it is not JSON. Choose a file that was saved as a job file."
        ) from error
    return check_job(job)


def check_job(job: Any) -> dict[str, Any]:
    """Check a job's format, version, keys, kinds of value and ids; return it as one of this version."""
    if not isinstance(job, dict) or job.get("format") != FORMAT:
        _refuse(f'This is no job file: its "format" is not "{FORMAT}". Choose a file saved as a job file.')
    version = job.get("version")
    if isinstance(version, bool) or not isinstance(version, int) or version < 1:
        _refuse('The job file has no "version". Choose a file saved as a job file.')
    if version > VERSION:
        _refuse(
            f"This job file is of version {version}, and this app reads up to version {VERSION}. "
            "Update the app, then open the file again."
        )
    job = lift(job)
    _known(job, JOB_KEYS, "the job file")
    for key in ("id", "name"):
        _text(job, key, "the job file")
    _section(job, "units", tuple(JOB_UNITS))
    for section in LEVELS["job"].sections:
        names = tuple(name for name, each in INPUTS.items() if each.section == section)
        _section(job, section, (*names, "name") if section == "card" else names)
    _units(job)
    _rows_held(job, "job", "the job", set())
    return job


def _section(job: dict[str, Any], key: str, names: tuple[str, ...]) -> None:
    section = job.get(key, {})
    if not isinstance(section, dict):
        _refuse(f'"{key}" in the job file is not a group of fields. Save the job again and open that file.')
    _known(section, names, f'"{key}"')
    for name in section:
        _value(section, name, f'"{key}"')


def _units(job: dict[str, Any]) -> None:
    for kind, unit in job.get("units", {}).items():
        if unit not in JOB_UNITS[kind]:
            choices = ", ".join(JOB_UNITS[kind])
            _refuse(f'The unit of {kind} in the job file is "{unit}". Write one of {choices}.')


def _rows_held(parent: dict[str, Any], parent_level: str, where: str, ids: set[str]) -> None:
    for level in held(parent_level):
        key = LEVELS[level].rows
        rows = parent.get(key, [])
        if not isinstance(rows, list) or not all(isinstance(row, dict) for row in rows):
            _refuse(f'"{key}" of {where} is not a list of rows. Save the job again and open that file.')
        for position, row in enumerate(rows, 1):
            _row(row, level, f"{LEVELS[level].word} {position} of {where}", ids)


def _row(row: dict[str, Any], level: str, title: str, ids: set[str]) -> None:
    records = LEVELS[level].records
    lists = (*(LEVELS[below].rows for below in held(level)), *records)
    names = tuple(name for name, each in INPUTS.items() if level in each.levels)
    _known(row, (*row_keys(level), *names), title)
    for name in row:
        if name not in lists:
            _value(row, name, title)
    _id(row, title, ids)
    _rows_held(row, level, title, ids)
    for key in records:
        _cups(row.get(key) or [], title)


def _cups(cups: Any, title: str) -> None:
    if not isinstance(cups, list):
        _refuse(f'"cups" of {title} is not a list. Save the job again and open that file.')
    for cup in cups:
        _cup(cup, title)


def _id(row: dict[str, Any], title: str, ids: set[str]) -> None:
    if not isinstance(row.get("id"), str) or not row["id"]:
        _refuse(f'{title[:1].upper()}{title[1:]} has no "id". Give every row an id of its own.')
    if row["id"] in ids:
        _refuse(f'Two rows of the job file have the id "{row["id"]}". Give every row an id of its own.')
    ids.add(row["id"])


def _cup(cup: Any, title: str) -> None:
    if not isinstance(cup, dict):
        _refuse(f"A cup of {title} is not a group of fields. Save the job again and open that file.")
    _known(cup, CUP_KEYS, f"a cup of {title}")
    entries = cup.get("entries", [])
    if not isinstance(entries, list):
        _refuse(f'"entries" of a cup of {title} is not a list. Save the job again and open that file.')
    if not all(_is_entry(entry) for entry in entries):
        _refuse(f"A cup of {title} has an entry that is not known here. Save the job again.")
    if not isinstance(stages := cup.get("stages"), list) or not all(each in STAGE_NAMES for each in stages):
        _refuse(f'"stages" of a cup of {title} does not list stages that are known here. Save the job again.')
    amounts = cup.get("amounts") or {}
    numbers = isinstance(amounts, dict) and all(
        isinstance(each, int | float) and not isinstance(each, bool) for each in amounts.values()
    )
    if not numbers:
        _refuse(f"The amounts of a cup of {title} are not numbers. Save the job again.")
    if isinstance(cup.get("plan"), dict):
        check_job(cup["plan"])


def _is_entry(entry: Any) -> bool:
    if not isinstance(entry, dict) or not isinstance(kind := entry.get("kind"), str) or kind not in ENTRIES:
        return False
    texts = ("id", "at", *(key for key in ENTRIES[kind] if key != "count"))
    count = entry.get("count", 0)
    return (
        all(isinstance(entry.get(key), str) for key in texts)
        and all(key in ("kind", "count", *texts) for key in entry)
        and ("stage" not in texts or entry["stage"] in TAPS)
        and isinstance(count, int | float)
        and not isinstance(count, bool)
    )


def _known(group: dict[str, Any], names: tuple[str, ...], where: str) -> None:
    for key in group:
        if key not in names:
            _refuse(f'"{key}" in {where} is not known here. Take it out of the file, then open it again.')


def _text(group: dict[str, Any], key: str, where: str) -> None:
    if group.get(key) is not None and not isinstance(group[key], str):
        _refuse(f'"{key}" in {where} is not text. Put it in quotation marks, then open the file again.')
    if len(group.get(key) or "") > LONGEST_TEXT:
        _refuse(f'"{key}" in {where} is longer than {LONGEST_TEXT} letters. Shorten it, then open it again.')


def _value(group: dict[str, Any], key: str, where: str) -> None:
    value = group[key]
    if isinstance(value, bool) or not (value is None or isinstance(value, str | int | float)):
        _refuse(f'"{key}" in {where} is neither text nor a number. Write it as text, such as "12 3/8 in".')
    if key in ("id", "name", "swatch") or isinstance(value, str):
        _text(group, key, where)


def _refuse_constant(name: str) -> NoReturn:
    _refuse(f"{name} in the job file is no number. Take it out, then open the file again.")


def _refuse(sentence: str) -> NoReturn:
    raise JobFileError(sentence)
