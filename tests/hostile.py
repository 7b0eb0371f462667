"""Job files that nobody should send: good ones with something in them changed, drawn from a seed."""

import copy
import json
import random
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

from webapp.job.demo import EXAMPLE_JOB

FOLDER = Path(__file__).parent / "saved"
# What JSON may hold, but Python's own writer would not write; it stands for the text behind it.
RAW = {
    "@huge": "1e400",
    "@large": "-1e308",
    "@digits": "9" * 400,
    "@thousands": "1" * 5000,
    "@point": "0." + "3" * 400,
    "@nan": "NaN",
    "@nothing": "-0.0",
    "@half": '"\\ud83d"',
    "@halves": '"a\\udc00\\ud83db"',
    "@whole": '"\\ud83d\\ude00"',
    "@nul": '"\\u0000\\u001b[31m"',
}
VALUES: tuple[Any, ...] = (
    *RAW,
    None,
    True,
    False,
    0,
    -1,
    1,
    2,
    2.5,
    3.0,
    1e15,
    1e300,
    5e-324,
    2**53,
    2**63,
    "",
    " ",
    "0",
    "-4",
    "1/0",
    "12 3/8",
    "1e5",
    "²³",
    "٣",
    "9" * 40,
    "9" * 401,
    "😀" * 200,
    "\u2028",
    "\x1f12",
    "12\ufeff",
    " 9 \x85",
    "NaN",
    "<img src=x onerror=alert(1)>",
    "__proto__",
    "known_area",
    "clear",
    "#12345g",
    "#abcdef",
    "2025-02-30T10:00:00.000Z",
    "1999-12-31T23:59:59.999Z",
    "2200-01-01T00:00:00.000Z",
    "2024-02-29T23:59:59.999Z",
    'a"]',
    "a\nb",
    [],
    {},
    [[]],
    [1],
    {"id": "x"},
    {"0": {"tint": "clear"}},
)
KEYS = ("__proto__", "constructor", "toString", "length", "1", "0", "", "id", "cups", "@half", "😀", "\uffee")

Mutation = Callable[[random.Random, Any], Any]


def good_files() -> list[dict[str, Any]]:
    """Return jobs of each version, small ones: a cup or two, cut-outs, numbers for texts."""
    files = [copy.deepcopy(EXAMPLE_JOB), _with_everything()]
    for path in sorted(FOLDER.glob("*.json")):
        saved = json.loads(path.read_text(encoding="utf-8"))
        colour = saved["colours"][0]
        files.append({**saved, "colours": [{**colour, "cups": colour["cups"][-2:]}]})
    return files


def _with_everything() -> dict[str, Any]:
    job = copy.deepcopy(EXAMPLE_JOB)
    del job["example"]
    job["room"] |= {"air_temperature": 296.15, "surface_temperature": None}
    job["bench"] |= {"bench_slope": "1/8 in/ft", "planned_coats": "2"}
    job["colours"][0] |= {"tint": "recipe", "recipe_load": "1 %", "need_basis": ""}
    job["colours"][0]["faces"] += [
        {
            "id": "f2",
            "name": "Ring",
            "shape": "ring",
            "outer_diameter": "500 mm",
            "inner_diameter": 12,
            "depth": "1/8",
            "edge": "rounded",
            "edge_radius": "1 mm",
            "groove": "v",
            "groove_width": "1/4",
            "groove_length": "3 ft 2 in",
            "openings": [{"id": "o1", "shape": "circle", "diameter": "2"}, {"id": "o2", "name": "Slot"}],
        },
        {"id": "f3", "name": "Letters", "shape": "lettering"},
    ]
    job["colours"].append({"id": "c2", "name": "Second", "swatch": "", "tint": "clear", "faces": []})
    return job


def hostile_file(seed: int) -> bytes:
    """Return a good file with one to three changes, as the seed draws them."""
    draw = random.Random(f"hostile {seed}")
    job = copy.deepcopy(draw.choice(GOOD))
    for _ in range(draw.choice((1, 1, 2, 3))):
        job = draw.choice(IN_THE_TREE)(draw, job)
    content = _written(job).encode("utf-8", "surrogatepass")
    if draw.random() < 0.25:
        content = draw.choice(IN_THE_BYTES)(draw, content)
    return content


def _written(job: Any) -> str:
    text = json.dumps(job, ensure_ascii=False)
    return re.sub(r'"(@\w+)"', lambda found: RAW.get(found[1], found[0]), text)


def _places(value: Any) -> list[tuple[Any, Any]]:
    """Return every group or list of a job with each key or place in it."""
    found, waiting = [], [value]
    while waiting:
        holder = waiting.pop()
        keys = list(holder) if isinstance(holder, dict) else list(range(len(holder)))
        found += [(holder, key) for key in keys]
        waiting += [holder[key] for key in keys if isinstance(holder[key], dict | list)]
    return found


def _place(draw: random.Random, job: Any) -> tuple[Any, Any]:
    places = _places(job) if isinstance(job, dict | list) else []
    # What stands in a plan is most of a file, and as much alike: look there less often.
    return draw.choice(places) if places else ([None], 0)


def _value_swapped(draw: random.Random, job: Any) -> Any:
    holder, key = _place(draw, job)
    holder[key] = copy.deepcopy(draw.choice(VALUES))
    return job


def _two_swapped(draw: random.Random, job: Any) -> Any:
    (one, key), (other, place) = _place(draw, job), _place(draw, job)
    one[key], other[place] = copy.deepcopy(other[place]), copy.deepcopy(one[key])
    return job


def _key_dropped(draw: random.Random, job: Any) -> Any:
    holder, key = _place(draw, job)
    del holder[key]
    return job


def _key_added(draw: random.Random, job: Any) -> Any:
    holder, _ = _place(draw, job)
    if isinstance(holder, dict):
        holder[draw.choice(KEYS)] = copy.deepcopy(draw.choice(VALUES))
    else:
        holder.append(copy.deepcopy(draw.choice(VALUES)))
    return job


def _key_moved(draw: random.Random, job: Any) -> Any:
    (one, key), (other, _) = _place(draw, job), _place(draw, job)
    if isinstance(one, dict) and isinstance(other, dict):
        other[key] = copy.deepcopy(one[key])
    return job


def _row_doubled(draw: random.Random, job: Any) -> Any:
    holder, key = _place(draw, job)
    if isinstance(holder, list):
        holder += [copy.deepcopy(holder[key]) for _ in range(draw.choice((1, 1, 3, 45, 201)))]
    return job


def _number_nudged(draw: random.Random, job: Any) -> Any:
    holder, key = _place(draw, job)
    if isinstance(holder[key], int | float) and not isinstance(holder[key], bool):
        holder[key] = draw.choice((-1, 1e-9, 1.5, 1e6, 1e12, 1e300)) * holder[key]
    elif isinstance(holder[key], str):
        holder[key] = re.sub(
            r"\d+", lambda found: str(int(found[0]) * draw.choice((0, 3, 10**9))), holder[key]
        )
    return job


def _version_changed(draw: random.Random, job: Any) -> Any:
    if isinstance(job, dict):
        job["version"] = draw.choice(
            (1, 2, 3, 4, 5, 6, 99, 0, -1, 2.0, 2.5, True, "3", None, "@huge", "@thousands")
        )
    return job


def _wrapped_deep(draw: random.Random, job: Any) -> Any:
    holder, key = _place(draw, job)
    for _ in range(draw.choice((5, 18, 24, 31, 60))):
        holder[key] = [holder[key]] if draw.random() < 0.5 else {"a": holder[key]}
    return job


def _plan_in_plan(_draw: random.Random, job: Any) -> Any:
    cups = [holder for holder, key in _places(job) if key == "plan"] if isinstance(job, dict) else []
    for cup in cups:
        cup["plan"] = copy.deepcopy(job)
    return job


def _byte_changed(draw: random.Random, content: bytes) -> bytes:
    place = draw.randrange(len(content))
    return content[:place] + bytes([draw.randrange(256)]) + content[place + draw.choice((0, 1)) :]


def _cut_off(draw: random.Random, content: bytes) -> bytes:
    return content[: draw.randrange(len(content))]


def _part_repeated(draw: random.Random, content: bytes) -> bytes:
    start = draw.randrange(len(content))
    part = content[start : start + draw.randrange(1, 60)]
    place = draw.randrange(len(content))
    return content[:place] + part + content[place:]


def _brackets_put_in(draw: random.Random, content: bytes) -> bytes:
    place = draw.randrange(len(content))
    return (
        content[:place]
        + draw.choice((b"[", b"{", b'"', b"\\", b"]")) * draw.choice((1, 29, 40, 5000))
        + content[place:]
    )


def _key_doubled(draw: random.Random, content: bytes) -> bytes:
    """Put one key of a group into it again, with another value: of two alike the last counts."""
    groups = [found.end() for found in re.finditer(rb"\{(?=\")", content)]
    keys = re.findall(rb'"[\w]+": ', content)
    if not groups or not keys:
        return content
    place = draw.choice(groups)
    value = draw.choice((b"1", b"null", b'"x"', b"[]", b"{}", b"1e999"))
    return content[:place] + draw.choice(keys) + value + b", " + content[place:]


def _mark_before(_draw: random.Random, content: bytes) -> bytes:
    return b"\xef\xbb\xbf" + content


IN_THE_TREE: tuple[Mutation, ...] = (
    _value_swapped,
    _value_swapped,
    _value_swapped,
    _value_swapped,
    _two_swapped,
    _key_dropped,
    _key_added,
    _key_moved,
    _row_doubled,
    _number_nudged,
    _number_nudged,
    _number_nudged,
    _version_changed,
    _wrapped_deep,
    _plan_in_plan,
)
IN_THE_BYTES: tuple[Mutation, ...] = (
    _byte_changed,
    _byte_changed,
    _cut_off,
    _part_repeated,
    _brackets_put_in,
    _key_doubled,
    _mark_before,
)
GOOD = good_files()
