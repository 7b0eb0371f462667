// Calendar files by RFC 5545: text from moments, the same text for the same moments. Pure.

const FOLD_AT = 75;
const EVENT_MINUTES = 10;

/**
 * A deadline in the calendar: `start` in milliseconds, `warnings` seconds ahead of it at which it rings too.
 * @typedef {{uid: string, sequence: number, start: number, summary: string, description: string,
 *   warnings?: number[]}} CalendarEvent
 */

/**
 * The text of a calendar file with one event and its alarms for each deadline.
 * @param {CalendarEvent[]} events
 * @param {number} stamp the moment at which the file is made, in milliseconds
 */
export function calendarText(events, stamp) {
  const lines = [
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Sixteenth//Bench clocks//EN",
    "CALSCALE:GREGORIAN",
    ...events.flatMap((event) => eventLines(event, stamp)),
    "END:VCALENDAR",
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join("");
}

function eventLines({ uid, sequence, start, summary, description, warnings = [] }, stamp) {
  return [
    "BEGIN:VEVENT",
    `UID:${escaped(uid)}`,
    `DTSTAMP:${inUtc(stamp)}`,
    `DTSTART:${inUtc(start)}`,
    `DURATION:PT${EVENT_MINUTES}M`,
    `SEQUENCE:${sequence}`,
    `SUMMARY:${escaped(summary)}`,
    `DESCRIPTION:${escaped(description)}`,
    "TRANSP:TRANSPARENT",
    ...[...warnings, 0].flatMap((seconds) => alarmLines(seconds, summary)),
    "END:VEVENT",
  ];
}

function alarmLines(seconds, summary) {
  return [
    "BEGIN:VALARM",
    "ACTION:DISPLAY",
    `TRIGGER:${seconds ? `-PT${seconds}S` : "PT0S"}`,
    `DESCRIPTION:${escaped(summary)}`,
    "END:VALARM",
  ];
}

function inUtc(moment) {
  return new Date(moment).toISOString().replace(/\.\d+/, "").replace(/[-:]/g, "");
}

/** Backslash, semicolon, comma and line end are escaped; other control characters have no place in a text. */
function escaped(text) {
  return text
    .replace(/\\/g, "\\\\")
    .replace(/;/g, "\\;")
    .replace(/,/g, "\\,")
    .replace(/\r\n|\r|\n/g, "\\n")
    .replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, "");
}

const encoder = new TextEncoder();

function folded(line) {
  const pieces = [];
  let piece = "";
  let octets = 0;
  for (const letter of line) {
    const size = encoder.encode(letter).length;
    if (octets + size > FOLD_AT) {
      pieces.push(piece);
      piece = " ";
      octets = 1;
    }
    piece += letter;
    octets += size;
  }
  return [...pieces, piece].join("\r\n");
}

/**
 * The events of a cup's clocks.
 * @param {{id: string, title: string, at: number, stage: object}[]} clocks
 * @param {number} sequence how often these events were given out before
 */
export function calendarEvents(clocks, sequence) {
  return clocks.map(({ id, title, at, stage }) => ({
    uid: `${id}@sixteenth`,
    sequence,
    start: at,
    summary: title,
    description: [stage.instruction, ...stage.cautions].join("\n"),
    warnings: stage.warning ? [stage.warning] : [],
  }));
}
