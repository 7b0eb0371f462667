"""Calendar files, held against RFC 5545 as the library icalendar reads it.

The JavaScript runs in Chromium, from the baked site.
"""

from datetime import UTC, datetime, timedelta

import icalendar
from playwright.sync_api import Page


def calendar_text(phone: Page, events: list[dict], stamp: int) -> str:
    """Return the calendar file that the phone makes of events."""
    return phone.evaluate(
        """async ([events, stamp]) => {
          const { calendarText } = await import(new URL("clocks/calendar.js", window.modules));
          return calendarText(events, stamp);
        }""",
        [events, stamp],
    )


def milliseconds(moment: datetime) -> int:
    """Return a moment as JavaScript counts it."""
    return int(moment.timestamp() * 1000)


STAMP = datetime(2025, 11, 14, 9, 30, 0, tzinfo=UTC)
SECOND_MIST = datetime(2025, 11, 14, 14, 32, 5, tzinfo=UTC)
EVENT = {
    "uid": "k1-second_mist@sixteenth",
    "sequence": 0,
    "start": milliseconds(SECOND_MIST),
    "summary": "Teal, cup 1: second mist",
    "description": "Mist the film again.\nNo flame; no heater, no spark. C:\\shop",
    "warnings": [120],
}


def test_an_event_reads_back_as_it_was_meant(phone: Page) -> None:
    calendar = icalendar.Calendar.from_ical(calendar_text(phone, [EVENT], milliseconds(STAMP)))
    assert calendar["VERSION"] == "2.0"
    assert "PRODID" in calendar
    (event,) = calendar.walk("VEVENT")
    assert event["UID"] == "k1-second_mist@sixteenth"
    assert event["SEQUENCE"] == 0
    assert event.decoded("DTSTAMP") == STAMP
    assert event.decoded("DTSTART") == SECOND_MIST
    assert event["SUMMARY"] == EVENT["summary"]
    assert event["DESCRIPTION"] == EVENT["description"]


def test_the_alarms_ring_at_the_moment_and_at_the_warning(phone: Page) -> None:
    calendar = icalendar.Calendar.from_ical(calendar_text(phone, [EVENT], milliseconds(STAMP)))
    alarms = calendar.walk("VALARM")
    assert [alarm["ACTION"] for alarm in alarms] == ["DISPLAY", "DISPLAY"]
    assert [alarm.decoded("TRIGGER") for alarm in alarms] == [timedelta(minutes=-2), timedelta(0)]
    assert all(alarm["DESCRIPTION"] for alarm in alarms)


def test_a_moment_is_written_in_utc(phone: Page) -> None:
    # RFC 5545, 3.3.5, form 2: "19980119T070000Z"
    moment = datetime(1998, 1, 19, 7, 0, 0, tzinfo=UTC)
    text = calendar_text(phone, [{**EVENT, "start": milliseconds(moment)}], milliseconds(STAMP))
    assert "DTSTART:19980119T070000Z\r\n" in text


def test_text_is_escaped_as_the_standard_says(phone: Page) -> None:
    # RFC 5545, 3.3.11: ESCAPED-CHAR = ("\\" / "\;" / "\," / "\N" / "\n")
    text = calendar_text(phone, [{**EVENT, "summary": "a\\b;c,d\r\ne\nf"}], milliseconds(STAMP))
    assert "SUMMARY:a\\\\b\\;c\\,d\\ne\\nf\r\n" in text


def test_lines_end_in_crlf_and_fold_at_75_octets(phone: Page) -> None:
    # RFC 5545, 3.1: lines "SHOULD NOT be longer than 75 octets, excluding the line break"
    summary = "Schöne Fläche „Grün“ 🎨, " * 12
    text = calendar_text(phone, [{**EVENT, "summary": summary}], milliseconds(STAMP))
    lines = text.split("\r\n")
    assert lines[-1] == ""
    assert all("\n" not in line and "\r" not in line for line in lines)
    assert max(len(line.encode()) for line in lines) in range(72, 76)
    (event,) = icalendar.Calendar.from_ical(text).walk("VEVENT")
    assert event["SUMMARY"] == summary


def test_folding_in_the_middle_of_a_letter_never_happens(phone: Page) -> None:
    for length in range(60, 80):
        text = calendar_text(phone, [{**EVENT, "summary": "x" * length + "ö🎨" * 40}], milliseconds(STAMP))
        for line in text.encode().split(b"\r\n"):
            line.decode()


def test_the_same_moments_make_the_same_bytes(phone: Page) -> None:
    first = calendar_text(phone, [EVENT], milliseconds(STAMP))
    assert calendar_text(phone, [EVENT], milliseconds(STAMP)) == first


def test_given_out_again_the_uid_stays_and_the_sequence_rises(phone: Page) -> None:
    events = phone.evaluate(
        """async () => {
          const { calendarEvents } = await import(new URL("clocks/calendar.js", window.modules));
          const stage = { instruction: "Mist.", cautions: ["No flame."], warning: 0 };
          const clocks = [{ id: "k1-second_mist", title: "Teal: second mist", at: 1763130725000, stage }];
          return [calendarEvents(clocks, 0)[0], calendarEvents(clocks, 1)[0]];
        }"""
    )
    assert events[0]["uid"] == events[1]["uid"]
    assert [event["sequence"] for event in events] == [0, 1]


def test_control_characters_do_not_reach_the_file(phone: Page) -> None:
    text = calendar_text(phone, [{**EVENT, "summary": "a\x00b\x07c\x7f"}], milliseconds(STAMP))
    assert "SUMMARY:abc\r\n" in text
