// A clock that is started when something begins and stopped when it ends. Only the instant lies on the phone, with the
// session's id or the words without the children's names; it goes on while the browser is closed.
import { isLog, offerOf, setMinutes, take, what } from './quick.js';
import { element } from './element.js';

const kept = 'clocks';
const longest = 1440;
const doubtful = 360;
const minute = 60_000;

const read = () => {
  try {
    return JSON.parse(localStorage.getItem(kept) ?? '[]').filter(c => Number.isFinite(c?.at));
  } catch {
    return [];
  }
};
const keep = clocks => {
  try {
    localStorage.setItem(kept, JSON.stringify(clocks));
  } catch {
    // A phone that keeps nothing has no clock either; the minutes are typed.
  }
};

const now = () => new Date().getTime();
const lasted = clock => Math.min(longest, Math.max(1, Math.round(((clock.until ?? now()) - clock.at) / minute)));
const inWords = minutes => minutes < 60 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')}`;
const since = clock => new Date(clock.at).toLocaleTimeString('en-US', { hour: 'numeric', minute: '2-digit', hourCycle: 'h23' });
const titleOf = clock => document.querySelector(`#line-${clock.session?.replaceAll('-', '')} .strip-title`)?.textContent ?? clock.words ?? 'What you began';

const bare = text => {
  let words = text;
  for (const box of document.querySelectorAll('[data-name]')) {
    words = words.split(/(\s+)/).filter(w => w.toLowerCase() !== box.dataset.name.toLowerCase()).join('');
  }
  return words.trim();
};

const showOnToday = () => {
  const section = document.getElementById('clocks');
  if (!section) return;
  const clocks = read();
  section.hidden = clocks.length === 0;
  section.firstElementChild.replaceChildren(...clocks.map(clock => {
    const row = element('li');
    const told = element('div', { textContent: titleOf(clock), className: 'row-main' });
    told.append(element('p', { textContent: clock.until ? `stopped after ${inWords(lasted(clock))}, not written down yet` : `since ${since(clock)}, ${inWords(lasted(clock))}`, className: 'quiet' }));
    const side = element('div', { className: 'row-side' });
    const stop = element('a', { textContent: clock.until ? 'Write it down' : 'Stop', className: 'button' });
    stop.href = `/log/new#clock=${clock.id}`;
    stop.dataset.clockStop = clock.id;
    const forget = element('button', { type: 'button', textContent: 'Forget it', className: 'button quiet' });
    forget.dataset.clockForget = clock.id;
    side.append(stop, forget);
    row.append(told, side);
    return row;
  }));
};

const dress = () => {
  const clocks = read();
  for (const button of document.querySelectorAll('[data-clock]')) {
    button.hidden = clocks.some(c => !c.until && c.session === button.dataset.clock && button.dataset.clock);
  }
  showOnToday();
};

const stop = id => {
  const clocks = read();
  const clock = clocks.find(c => c.id === id);
  if (clock && !clock.until) {
    clock.until = now();
    keep(clocks);
  }
  return clock;
};

const note = text => {
  const told = element('p', { textContent: text, className: 'note look' });
  told.setAttribute('role', 'status');
  document.querySelector('form[data-quick]').prepend(told);
};

const fill = () => {
  const id = isLog() && new URLSearchParams(location.hash.slice(1)).get('clock');
  const clock = id && stop(id);
  if (!clock) return;
  const offer = offerOf(clock.session);
  if (offer) take(offer);
  else if (clock.words) what().value = clock.words;
  else note('What the clock was started for is not among the proposals. Say what it was.');
  const minutes = lasted(clock);
  setMinutes(minutes <= doubtful ? minutes : 0);
  if (minutes > doubtful) note(`The clock ran for ${inWords(minutes)}. Was it all of that? Say below how long it was.`);
  // Sent at once, or kept on the phone until it can be.
  for (const kind of ['submit', 'keep']) document.querySelector('form[data-quick]').addEventListener(kind, () => keep(read().filter(c => c.id !== id)));
};

document.addEventListener('click', event => {
  const button = event.target.closest?.('[data-clock], [data-clock-stop], [data-clock-forget]');
  if (!button) return;
  if ('clock' in button.dataset) {
    const session = button.dataset.clock || (isLog() ? document.querySelector('form[data-quick]').elements.Session.value : '');
    const clock = { id: String(now()), at: now(), ...(session ? { session } : { words: bare(what().value) }) };
    keep([...read(), clock]);
    const heard = document.getElementById('heard');
    if (heard) heard.textContent = 'The clock runs.';
    if (isLog()) location.assign('/today');
  } else if (button.dataset.clockStop) {
    stop(button.dataset.clockStop);
  } else {
    keep(read().filter(c => c.id !== button.dataset.clockForget));
  }
  dress();
});
document.addEventListener('htmx:load', dress);
setInterval(showOnToday, minute);

/** Shows the clocks that run, and fills the log's form from one that was stopped. */
export function dressClocks() {
  dress();
  fill();
}

dressClocks();
