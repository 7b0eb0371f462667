"""`python -m e2e.budget` measures every figure that a phone has to keep to, and prints the table.

Named parts of it (see PARTS) are measured alone: `python -m e2e.budget keys plans`.
"""

import shutil
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import sync_playwright

from e2e.budget import commands, keys, starts, staying, taps, visits
from e2e.budget.phones import Phones
from e2e.budget.table import Found, failures, measured_until_kept, table

PARTS: dict[str, Callable[[Phones], Found]] = {
    "baking": commands.baking,
    "plans": commands.plans,
    "visits": visits.first_visit,
    "slow": visits.slow_visits,
    "keys": keys.keys_to_paint,
    "starts": starts.offline_starts,
    "staying": staying.staying,
    "taps": taps.taps_to_the_first_a_and_b,
}


def main(parts: list[str]) -> int:
    """Measure the parts, or all of them, and print the table; the exit code counts what was missed."""
    found: Found = {}
    folder = Path(tempfile.mkdtemp())
    with sync_playwright() as playwright:
        phones = Phones(playwright, folder)
        try:
            for part in parts or PARTS:
                measure = PARTS[part]
                found |= measured_until_kept(lambda measure=measure: measure(phones))
        finally:
            phones.server.stop()
            shutil.rmtree(folder, ignore_errors=True)
            # A run that stops on the way shows what it found.
            print("\n".join(table(found)), flush=True)
    return len(failures(found))


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
