"""What the commands say on a terminal: no sign of another's file steers it, none ends in a traceback."""

import os
import re
import sys
from typing import Any

# What moves the cursor, changes colors, turns the line around, or is half a character.
_UNSEEN = re.compile("[\x00-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ud800-\udfff]")


def visible(text: str) -> str:
    r"""Return a text of one line with a sign for each character that would not be seen.

    >>> visible("Quarry\x1b[2J Road")
    'Quarry\\x1b[2J Road'
    """
    return _UNSEEN.sub(lambda found: found[0].encode("unicode_escape").decode(), text)


def visible_in(tree: Any) -> Any:
    """Return a job, or what else is read from JSON, with every text in it made visible."""
    if isinstance(tree, dict):
        return {name: visible_in(each) for name, each in tree.items()}
    if isinstance(tree, list):
        return [visible_in(each) for each in tree]
    return visible(tree) if isinstance(tree, str) else tree


def write_what_it_can() -> None:
    """Let a terminal that lacks a character show its number instead."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="backslashreplace")


def say_wrong(what: object, why: object) -> int:
    """Say on one line what is wrong; return the exit code."""
    if isinstance(why, OSError):
        why = why.strerror or why
    print(visible(f"{what}: {why}"), file=sys.stderr)
    return 1


def finish_output() -> None:
    """Send out what is still held back, so that what goes wrong with it is known in time."""
    if sys.stdout is not None:
        sys.stdout.flush()


def drop_output() -> None:
    """Let what nobody takes go nowhere, or Python complains once more as it ends."""
    try:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    except (OSError, ValueError, AttributeError):
        sys.stdout = None
