// The family's day and hour: in its own zone, by the server's clock. A phone's clock may be hours off; what counts is how far
// it was from the server's when both last met.
const kept = 'clock';
const root = document.documentElement;
let clock = read();

function read() {
  try {
    return JSON.parse(localStorage.getItem(kept)) ?? {};
  } catch {
    return {};
  }
}

/** What the server said of its clock and of the family's zone a moment ago. */
export function told(now, zone) {
  clock = { ahead: Date.parse(now) - Date.now(), zone: zone || clock.zone };
  try {
    localStorage.setItem(kept, JSON.stringify(clock));
  } catch {
    // It holds while the page is open.
  }
}

if (root.dataset.now) told(root.dataset.now, root.dataset.zone);

/** The instant it is now. */
export const instant = () => new Date(Date.now() + (clock.ahead || 0));

const format = options => {
  try {
    return new Intl.DateTimeFormat('en-US', { timeZone: clock.zone, ...options });
  } catch {
    return new Intl.DateTimeFormat('en-US', options);
  }
};

/** An instant in the family's zone: { date: '2026-03-12', minutes: after midnight }. */
export function local(at) {
  const parts = format({ hourCycle: 'h23', year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit' }).formatToParts(at);
  const of = Object.fromEntries(parts.map(part => [part.type, part.value]));
  return { date: `${of.year}-${of.month}-${of.day}`, minutes: Number(of.hour) * 60 + Number(of.minute) };
}

export const now = () => local(instant());

export const today = () => now().date;

/** “Thursday 12 March, 9:05”. */
export function inWords(at) {
  const { date, minutes } = local(at);
  const day = new Date(`${date}T12:00:00Z`);
  const of = Object.fromEntries(new Intl.DateTimeFormat('en-US', { timeZone: 'UTC', weekday: 'long', day: 'numeric', month: 'long' }).formatToParts(day).map(part => [part.type, part.value]));
  return `${of.weekday} ${of.day} ${of.month}, ${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
}

/** A day some days on, as ISO 8601 writes it. */
export function dayAfter(date, days) {
  const day = new Date(`${date}T12:00:00Z`);
  day.setUTCDate(day.getUTCDate() + days);
  return day.toISOString().slice(0, 10);
}

/** The week of a day as ISO 8601 writes it: the one that holds its Thursday. */
export function weekOf(date) {
  const day = new Date(`${date}T12:00:00Z`);
  const thursday = dayAfter(date, 4 - (day.getUTCDay() || 7));
  const year = thursday.slice(0, 4);
  const number = Math.floor((Date.parse(`${thursday}T12:00:00Z`) - Date.parse(`${year}-01-01T12:00:00Z`)) / (7 * 86_400_000)) + 1;
  return `${year}-W${String(number).padStart(2, '0')}`;
}
