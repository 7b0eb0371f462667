// How moments and spans of time are written: time of day as the phone writes it, a span as a clock or in words.

const SECOND = 1000;
const MINUTE = 60 * SECOND;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

const timeFormat = new Intl.DateTimeFormat(undefined, { hour: "numeric", minute: "2-digit" });
const secondFormat = new Intl.DateTimeFormat(undefined, { hour: "numeric", minute: "2-digit", second: "2-digit" });
const dayFormat = new Intl.DateTimeFormat(undefined, { weekday: "short" });
const fullFormat = new Intl.DateTimeFormat(undefined, { dateStyle: "full", timeStyle: "short" });
const dateFormat = new Intl.DateTimeFormat(undefined, { weekday: "short", day: "numeric", month: "short" });

/** The time of day of a moment (milliseconds since 1970), as this phone writes it: "14:32" or "2:32 PM". */
export function timeOfDay(moment) {
  return timeFormat.format(moment);
}

/** The time of day of a moment to the second: "14:32:07" or "2:32:07 PM". */
export function timeToTheSecond(moment) {
  return secondFormat.format(moment);
}

/** A moment with its whole date: "Saturday, November 28, 2026 at 2:32 PM". */
export function dateInFull(moment) {
  return fullFormat.format(moment);
}

/** A moment seen from now: "14:32", "tomorrow 14:32", "Fri 14:32", "Fri 14 Nov, 14:32". */
export function dayAndTime(moment, now) {
  const days = Math.round((midnight(moment) - midnight(now)) / DAY);
  if (days === 0) return timeOfDay(moment);
  if (days === 1) return `tomorrow ${timeOfDay(moment)}`;
  if (days === -1) return `yesterday ${timeOfDay(moment)}`;
  if (days > 1 && days < 7) return `${dayFormat.format(moment)} ${timeOfDay(moment)}`;
  return `${dateFormat.format(moment)}, ${timeOfDay(moment)}`;
}

function midnight(moment) {
  return new Date(moment).setHours(0, 0, 0, 0);
}

/** A span in words, its small end cut off: "40 seconds", "12 minutes", "2 hours 5 minutes", "3 days". */
export function inWords(span) {
  const size = Math.max(0, span);
  if (size < MINUTE) return counted(Math.floor(size / SECOND), "second");
  if (size < HOUR) return counted(Math.floor(size / MINUTE), "minute");
  if (size < 2 * DAY) return pair(size, HOUR, "hour", MINUTE, "minute");
  return pair(size, DAY, "day", HOUR, "hour");
}

function pair(size, large, largeName, small, smallName) {
  const rest = Math.floor((size % large) / small);
  const first = counted(Math.floor(size / large), largeName);
  return rest ? `${first} ${counted(rest, smallName)}` : first;
}

/** A count with its noun: "1 day", "2 days". */
export function counted(count, name) {
  return `${count} ${name}${count === 1 ? "" : "s"}`;
}

/** A span as a clock shows it, figures and units in turn: ["1:24"], ["3", "hr", "12", "min"], ["2", "d", "4", "hr"]. */
export function clockFace(span) {
  const seconds = Math.floor(Math.max(0, span) / SECOND);
  const minutes = Math.floor(seconds / 60);
  const hours = Math.floor(minutes / 60);
  if (minutes < 60) return [`${minutes}:${String(seconds % 60).padStart(2, "0")}`];
  if (hours < 48) return [String(hours), "hr", String(minutes % 60), "min"];
  return [String(Math.floor(hours / 24)), "d", String(hours % 24), "hr"];
}

/** A span as one short text: "in 6 min", "in 3 hr 12 min"; under ten minutes by the second: "in 1:24". */
export function shortly(span) {
  if (span < 10 * MINUTE) return `in ${clockFace(span).join(" ")}`;
  if (span < HOUR) return `in ${Math.floor(span / MINUTE)} min`;
  return `in ${clockFace(span).join(" ")}`;
}
