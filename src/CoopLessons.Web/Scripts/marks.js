// What waits on this phone, where it belongs: a count at the head of every page, marks on the day's lines, and what was logged
// besides under its day.
import { canKeep } from './vault.js';
import { watch, drop } from './outbox.js';
import { renewLine, sentSinceMade } from './lines.js';
import { element } from './element.js';

const shell = 'shell' in document.documentElement.dataset;
const field = (item, name) => item.fields?.find(([key]) => key === name)?.[1];
const handlerOf = item => new URL(item.action ?? '/', location.origin).searchParams.get('handler');

/** “3 waiting”; where something needs somebody, that alone. */
export function counted(items) {
  const needs = items.filter(item => item.state === 'needs').length;
  if (needs > 0) return `${needs} ${needs === 1 ? 'needs' : 'need'} you`;
  return items.length > 0 ? `${items.length} waiting` : '';
}

function count(items) {
  for (const place of document.querySelectorAll('[data-pending]')) {
    const words = counted(items);
    place.hidden = words.length === 0;
    if (place.textContent !== words) place.textContent = words;
    place.classList.toggle('look', items.some(item => item.state === 'needs'));
  }
}

const lineOf = item => document.getElementById(`line-${(field(item, 'sessionId') ?? field(item, 'Session') ?? '').replaceAll('-', '')}`);

const outcomes = { Done: 'done', NotToday: 'not done' };

function markLines(items) {
  const marked = new Set();
  for (const item of items) {
    const line = lineOf(item);
    const outcome = outcomes[handlerOf(item)] ?? (field(item, 'Session') ? 'done' : null);
    if (!line || !outcome) continue;
    marked.add(line.id);
    markLine(line, item, outcome);
  }
  for (const mark of document.querySelectorAll('.waits-here')) {
    const line = mark.closest('li');
    if (!line || marked.has(line.id)) continue;
    unmark(line);
    if (!shell) renewLine(line);
  }
}

function markLine(line, item, outcome) {
  const says = item.state === 'needs' ? `${outcome}, needs you` : `${outcome}, waiting`;
  const before = line.querySelector('.waits-here');
  if (before?.dataset.says === says) return;
  before?.remove();
  for (const act of line.querySelectorAll('.strip-act, .strip-more form[data-keep]')) act.hidden = true;
  line.classList.add(item.state === 'needs' ? 'is-refused' : 'is-waiting');
  const back = element('button', { type: 'button', className: 'button quiet', textContent: 'Undo' });
  back.addEventListener('click', () => drop(item.id));
  const mark = element('div', { className: 'waits-here' }, element('span', { className: 'state', textContent: says }), item.state === 'needs' ? element('a', { className: 'button quiet', href: '/phone', textContent: 'See why' }) : back);
  mark.dataset.says = says;
  line.append(mark);
}

function unmark(line) {
  line.querySelector('.waits-here')?.remove();
  line.classList.remove('is-waiting', 'is-refused');
  for (const act of line.querySelectorAll('.strip-act, .strip-more form[data-keep]')) act.hidden = false;
}

function listBesides(items) {
  const place = document.querySelector('[data-also]');
  if (!place) return;
  const besides = items.filter(item => item.kind === 'form' && field(item, 'Input.What') !== undefined && field(item, 'Input.Date') === place.dataset.also && !document.getElementById(`line-${(field(item, 'Session') ?? '').replaceAll('-', '')}`));
  place.hidden = besides.length === 0;
  place.replaceChildren();
  if (besides.length === 0) return;
  const photos = item => items.filter(other => other.after === item.id).length;
  place.append(element('h2', { textContent: 'Waiting on this phone' }), element('ul', { className: 'rows' }, ...besides.map(item => {
    const with_ = photos(item);
    return element('li', {}, element('a', { className: 'row-link', href: '/phone' },
      element('span', { className: 'row-main', textContent: field(item, 'Input.What') }),
      element('span', { className: 'row-side', textContent: (item.state === 'needs' ? 'needs you' : 'waiting') + (with_ ? ` · ${with_} ${with_ === 1 ? 'photo' : 'photos'}` : '') })));
  })));
}

/** Shows what waits on whatever the page shows now. */
export function mark(items) {
  count(items);
  markLines(items);
  listBesides(items);
}

if (canKeep()) {
  watch(mark);
  if (!shell) {
    sentSinceMade().then(items => {
      for (const line of new Set(items.map(lineOf))) if (line) renewLine(line);
    }, () => {});
  }
}
