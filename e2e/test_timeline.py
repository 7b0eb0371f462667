"""The picture of the day: what it says can be read, at whatever time of day and however long the waits."""

import pytest

from e2e.bench import BASE
from e2e.pages import JobSheet

MINUTE, HOUR = 60, 3600
# Pour-by, end of the pour, mists; tack-free, cured and top coat: seconds from the moment A touches B.
DAYS = {
    "an ordinary one": ((25, 11, 11, 20), (7, 36, 48)),
    "a fast resin": ((6, 5, 5, 9), (2, 3, 3.5)),
    "a slow resin": ((70, 30, 45, 180), (30, 160, 170)),
    "all waits alike": ((15, 14, 15, 15.5), (24, 24.5, 25)),
    "mists in the afternoon": ((40, 30, 200, 330), (5, 60, 62)),
    "no mists, no pour-by": ((None, 22, None, None), (None, 20, None)),
}
# Draws each day from each ten minutes of a day, and returns the labels that stand in one another.
DRAWN = """async ([base, days]) => {
  const { drawDay } = await import(base + "pictures/timeline.js");
  const host = document.querySelector("[data-draw=day]");
  const found = { drawn: 0, labels: 0, smallest: Infinity, collided: [] };
  for (const { minutes, later } of days) {
    for (let start = 0; start < 1440; start += 10) {
      const [by, poured, ...mists] = minutes;
      const picture = drawDay({
        start: new Date(2026, 5, 12, 0, start).getTime(),
        minutes: { by, poured, mists },
        later: ["tack-free", "cured", "top coat"].map((name, place) => ({ name, at: later[place] })),
        recoat: null,
        title: "The day",
      });
      host.replaceChildren(picture);
      const texts = [...picture.querySelectorAll("text")];
      const boxes = texts.map((text) => text.getBoundingClientRect());
      const scale = picture.getBoundingClientRect().width / 320;
      for (const text of texts) {
        found.smallest = Math.min(found.smallest, parseFloat(getComputedStyle(text).fontSize) * scale);
      }
      boxes.forEach((one, place) => boxes.slice(place + 1).forEach((other, next) => {
        const isBeside = one.right < other.left || other.right < one.left;
        // The box of a text is as high as its line; its letters are less so.
        const isAbove = Math.abs(one.top - other.top) >= 12 * scale;
        if (!isBeside && !isAbove) {
          found.collided.push(`${texts[place].textContent} | ${texts[place + 1 + next].textContent}`);
        }
      }));
      found.drawn += 1;
      found.labels += texts.length;
    }
  }
  return found;
}"""


@pytest.fixture
def sheet(page, server) -> JobSheet:
    """The job sheet with the step of the day open, on a phone 360 px wide."""
    sheet = JobSheet(page).open(server.address)
    sheet.unfold("Pour and cure")
    return sheet


def test_no_label_of_the_day_stands_in_another_and_each_can_be_read(sheet, page):
    def seconds(values, unit):
        return [None if each is None else each * unit for each in values]

    days = [{"minutes": seconds(soon, MINUTE), "later": seconds(late, HOUR)} for soon, late in DAYS.values()]
    found = page.evaluate(f"async (days) => ({DRAWN})([{BASE}, days])", days)
    assert found["drawn"] == 144 * len(DAYS)
    assert found["labels"] > 6 * found["drawn"]
    assert found["collided"] == []
    assert found["smallest"] >= 12
