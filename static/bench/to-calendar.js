// A cup's coming times for the phone's calendar, which rings when a closed page cannot.
import { calendarEvents, calendarText } from "../clocks/calendar.js";
import { endOfPour, timesGivenOut } from "../clocks/cup-record.js";
import { clocksOf, clockTitle } from "../clocks/clocks.js";
import { handOut } from "../lib/files.js";

function coming(cup, colour, now) {
  if (endOfPour(cup) === null) return [];
  return clocksOf(cup, colour).filter((clock) => !clock.done && clock.at > now);
}

/** What the button says that hands a cup's coming times to the calendar; "" where none are to come. */
export function calendarWords(cup, colour, now) {
  const count = coming(cup, colour, now).length;
  if (!count) return "";
  const alarms = count === 1 ? "1 alarm" : `${count} alarms`;
  return timesGivenOut(cup) ? `Add ${alarms} to the calendar again` : `Add ${alarms} to the phone’s calendar`;
}

/** Hand a cup's coming times out as one calendar file. Call it from a tap. */
export function handOutTimes(cup, colour, jobName, now) {
  const before = jobName ? `${jobName}: ` : "";
  const clocks = coming(cup, colour, now).map((clock) => ({ ...clock, title: `${before}${clockTitle(clock)}` }));
  const text = calendarText(calendarEvents(clocks, timesGivenOut(cup)), now);
  return handOut({ name: `${fileName(colour.name)}-cup-${cup.number}.ics`, type: "text/calendar", text });
}

function fileName(words) {
  return (words || "color").toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "") || "color";
}
