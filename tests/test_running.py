"""How tests are run: the tenth of what takes long, the same each time; and what needs quiet, alone."""

import subprocess
import sys
from itertools import pairwise

from e2e.server import ROOT
from tests.running import left_out_of

LONG = [f"tests/test_{file}.py::test_it[{number}]" for file in "ab" for number in range(30)]

TESTS = """
import time
import pytest

def lasts(name):
    begun = time.time()
    time.sleep(0.1)
    with open("moments", "a") as moments:
        moments.write(f"{begun} {time.time()} {name}\\n")

@pytest.mark.quiet
@pytest.mark.parametrize("number", range(2))
def test_alone(number):
    lasts("alone")

@pytest.mark.parametrize("number", range(12))
def test_beside(number):
    lasts("beside")
"""


def test_of_each_files_long_tests_a_tenth_runs_and_the_seed_alone_decides_which():
    chosen = [sorted(set(LONG) - left_out_of(LONG, seed)) for seed in ("1", "1", "2")]
    assert chosen[0] == chosen[1] != chosen[2]
    assert [each.partition("::")[0] for each in chosen[0]] == ["tests/test_a.py"] * 3 + [
        "tests/test_b.py"
    ] * 3


def test_every_long_test_is_chosen_by_some_seed():
    assert set.intersection(*(left_out_of(LONG, str(seed)) for seed in range(100))) == set()


def test_what_needs_quiet_comes_last_and_meets_no_other_test(tmp_path):
    for name in ("e2e/test_one.py", "e2e/test_two.py"):
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).write_text(TESTS)
    options = ["-q", "-p", "tests.running", "-n2", "--dist=loadgroup", "--no-loadscope-reorder"]
    command = [sys.executable, "-m", "pytest", *options, "--rootdir", str(tmp_path), str(tmp_path)]
    subprocess.run(command, cwd=tmp_path, env={"PYTHONPATH": str(ROOT)}, check=True, capture_output=True)
    rows = [line.split() for line in (tmp_path / "moments").read_text().splitlines()]
    moments = sorted((float(begun), float(ended), name) for begun, ended, name in rows)
    meets = [(one, other) for (_, end, one), (begin, _, other) in pairwise(moments) if end > begin]
    assert ("beside", "beside") in meets
    assert [pair for pair in meets if "alone" in pair] == []
    # A worker is told of its next two tests, so that many may still come after the first that ran alone.
    order = [name for *_, name in moments]
    assert "alone" not in order[:22]
