"""What every planned cup keeps to, whatever the card, the room and the faces; in both languages.

Jobs are drawn by hypothesis: 20 000 with `--all`, and otherwise the tenth that the seed chooses.
"""

from dataclasses import dataclass, field
from typing import Any

import pytest
from hypothesis import HealthCheck, Phase, given, seed, settings
from hypothesis import strategies as st

from tests.drawn_jobs import FACES, JOBS
from webapp.sheet.runner import calculate

PARTS, IN_A_PART = 10, 2000
BATCH = 200
NEAR = 1 + 1e-9
LIMITS = ("cup_capacity_limit", "pourable_volume", "heat_volume", "cup_mass_limit")
STOPS = ("no_marks_fit", "cup_too_small", "no_time_for_heat", "no_time_to_pour", "drop_past_limit")


@dataclass
class Sight:
    """What is known from a cup: its own figures and those of the rows above it, and what is wrong there."""

    figures: dict[str, Any] = field(default_factory=dict)
    wrong: set[str] = field(default_factory=set)

    def __getitem__(self, name: str) -> Any:
        return self.figures.get(name)


def sights(rows: list[Any]) -> list[Sight]:
    """Return what is known from each cup, from rows of [level, its parent's place, figures, wrong checks]."""
    found = []
    for level, parent, figures, wrong in rows:
        if level == "cup":
            _, _, of_colour, wrong_in_colour = rows[parent]
            _, _, of_job, wrong_in_job = rows[0]
            found.append(Sight({**of_job, **of_colour, **figures}, {*wrong, *wrong_in_colour, *wrong_in_job}))
    return found


def in_python(job: dict[str, Any]) -> list[Any]:
    """The rows of a job as `sights` takes them."""
    rows = list(calculate(job).everything())
    places = {id(row): place for place, row in enumerate(rows)}
    return [
        [
            row.level,
            places[id(row.line[1])] if len(row.line) > 1 else None,
            {name: cell.value for name, cell in row.cells.items()},
            [check.name for check in row.checks if check.state == "wrong"],
        ]
        for row in rows
    ]


IN_JAVASCRIPT = """async (jobs) => {
  const { calculate, everyRow } = await import(new URL("sheet/sheet.js", window.modules));
  const figure = ([name, cell]) => [name, cell.blank ? null : cell.value];
  return jobs.map((job) => {
    const rows = [...everyRow(calculate(job))];
    return rows.map((row) => [
      row.level,
      row.parent ? rows.indexOf(row.parent) : null,
      Object.fromEntries(Object.entries(row.cells).map(figure)),
      row.checks.filter((check) => check.state === "wrong").map((check) => check.name),
    ]);
  });
}"""


def broken(cup: Sight) -> list[str]:
    """Return the names of what a cup does not keep to."""
    laws = {
        "a cup is within every limit that is shown": within_limits,
        "it is poured before three quarters of its gel": poured_in_time,
        "resin is never less than the need": enough,
        "readings are whole or half marks": on_marks,
        "they keep the ratio, or there is a stop": in_ratio_or_stopped,
        "tint never passes its limit": tint_within,
    }
    return [says for says, holds in laws.items() if not holds(cup)]


def within_limits(cup: Sight) -> bool:
    amounts = [cup[name] for name in ("reading_total", "cup_volume") if cup[name] is not None]
    limits = [cup[name] for name in LIMITS if cup[name] is not None]
    mass, most = cup["cup_mass"], cup["greatest_cup_mass"]
    return all(amount <= limit * NEAR for amount in amounts for limit in limits) and (
        mass is None or most is None or mass <= most * NEAR
    )


def poured_in_time(cup: Sight) -> bool:
    by, gel, usable = cup["pour_by"], cup["gel_time"], cup["usable_time"]
    if by is None:
        return True
    ends_late = cup["pour_end"] is not None and cup["pour_end"] > by * 1.005 * NEAR
    return (
        (gel is None or by <= 0.75 * gel * NEAR)
        and (usable is None or by <= usable * NEAR)
        and ends_late == ("pour_ends_late" in cup.wrong)
    )


def enough(cup: Sight) -> bool:
    total, cups = cup["reading_total"], cup["cups"]
    if total is None:
        return True
    reaches = cups * (total - cup["cup_residue"])
    is_short = reaches < cup["net_need"] * (1 - 1e-8)
    return cups * total >= cup["colour_need"] * (1 - 1e-8) and (not is_short or cup["need_basis"] == "claim")


def on_marks(cup: Sight) -> bool:
    halves = [2 * cup[name] / cup["cup_graduation"] for name in ("reading_a", "reading_b") if cup[name]]
    return all(abs(each - round(each)) < 1e-6 for each in halves)


def in_ratio_or_stopped(cup: Sight) -> bool:
    a, b = cup["reading_a"], cup["reading_b"]
    if a is None or b is None:
        # A cup without readings says why: its ratio or its claim is not known, or there is a stop.
        has_no_claim = cup["need_basis"] == "claim" and cup["claim_need"] is None
        return cup["volume_ratio"] is None or has_no_claim or bool(cup.wrong & set(STOPS))
    return abs(a / b / cup["volume_ratio"] - 1) <= cup["rounding_tolerance"] * (1 + 1e-6)


def tint_within(cup: Sight) -> bool:
    drops, limit, total = cup["starting_drops"], cup["tint_limit"], cup["cup_total"]
    if drops is None or limit is None or total is None:
        return True
    return drops * cup["drop_volume"] <= limit * total * NEAR


def drawn_in_a_part(part: int, jobs: st.SearchStrategy[Any], do: Any, count: int = IN_A_PART) -> None:
    """Do something with each job of a part, as hypothesis draws them."""
    phases = (Phase.generate, Phase.shrink)
    sized = settings(
        max_examples=count,
        deadline=None,
        database=None,
        phases=phases,
        suppress_health_check=list(HealthCheck),
    )
    seed(part)(sized(given(job=jobs)(do)))()


@pytest.mark.long
@pytest.mark.parametrize("part", range(PARTS))
def test_every_cup_of_any_job_keeps_to_all_that_is_shown(part: int) -> None:
    met = {"with readings": 0, "by heat": 0}

    def keeps(job: dict[str, Any]) -> None:
        for cup in sights(in_python(job)):
            assert broken(cup) == []
            met["with readings"] += cup["reading_total"] is not None
            met["by heat"] += cup["cup_limit"] is not None and cup["cup_limit"] == cup["heat_volume"]

    drawn_in_a_part(part, JOBS, keeps)
    assert met["with readings"] > IN_A_PART / 2
    assert met["by heat"] > IN_A_PART / 50


@pytest.mark.long
@pytest.mark.parametrize("part", range(PARTS))
def test_every_cup_of_any_job_keeps_to_it_on_the_phone_too(phone: Any, part: int) -> None:
    jobs: list[Any] = []
    drawn_in_a_part(part, JOBS, lambda job: jobs.append(job))
    with_readings = 0
    for start in range(0, len(jobs), BATCH):
        batch = jobs[start : start + BATCH]
        for job, rows in zip(batch, phone.evaluate(IN_JAVASCRIPT, batch), strict=True):
            for cup in sights(rows):
                assert broken(cup) == [], job
                with_readings += cup["reading_total"] is not None
    assert with_readings > IN_A_PART / 2


@pytest.mark.long
@pytest.mark.parametrize("part", range(PARTS))
def test_one_face_changed_never_changes_the_cups_of_another_color(part: int) -> None:
    def keeps(job: tuple[dict[str, Any], dict[str, Any]]) -> None:
        drawn, face = job
        first, second = drawn["colours"]
        changed = {**first, "faces": [{**face, "id": "c0f0"}, *first["faces"][1:]]}
        other = {**drawn, "colours": [changed, second]}
        before, after = ([row for row in in_python(each) if row[0] == "cup"][1] for each in (drawn, other))
        assert before[2:] == after[2:]

    drawn_in_a_part(part, st.tuples(JOBS, FACES), keeps, IN_A_PART // 4)
