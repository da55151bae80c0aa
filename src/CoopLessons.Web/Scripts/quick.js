// The form of the log: a tap on a proposal fills it. What is matched is what the server wrote into the page, in its order,
// so that it works without a network; only the beginnings of words are compared here.
import { today } from './clock.js';

let form = null;
const shownAtOnce = 5;
const shownTyped = 8;

const fold = text => text.normalize('NFKD').replace(/[\p{Mn}\p{Me}'’ʼ]/gu, '').toLowerCase().replaceAll('ς', 'σ').match(/[\p{L}\p{Nd}\p{Mc}]+/gu) ?? [];

const field = name => form.elements[`Input.${name}`];
const rows = () => [...form.querySelectorAll('.who [data-who]')];
const ownOf = box => form.elements[box.name.replace('There', 'Own')];
const counts = () => [...form.querySelectorAll('#counts input[name$=".SubjectId"]')].map(id => ({
  id: id.value,
  weight: form.elements[id.name.replace('SubjectId', 'Weight')],
  touched: [...form.querySelectorAll(`input[name="${id.name.replace('SubjectId', 'Touched')}"]`)].find(t => t.type === 'checkbox'),
  name: form.querySelector(`label[for="${form.elements[id.name.replace('SubjectId', 'Weight')].id}"]`).firstChild.textContent,
}));

const minutesOf = () => {
  const chosen = form.querySelector('input[name="Input.Length"]:checked')?.value;
  const other = field('OtherLength').value;
  return Number(other && (chosen === 'other' || other !== field('OtherBefore').value) ? other : chosen) || 0;
};

const length = minutes => minutes < 60 ? `${minutes} min` : minutes % 60 === 0 ? `${minutes / 60} h` : `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')}`;
const named = all => all.length < 2 ? all.join('') : `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`;

const listed = list => [list.dataset.learners.split(' '), list.dataset.subjects.split(' ')];

/** What an offer is found by: what was done, who was there and what it counts as, each from where it stands on the page. */
const wordsOfOffers = () => {
  const list = document.getElementById('offers');
  if (!list) return [];
  const [learners, subjects] = listed(list);
  const people = new Map(rows().map(box => [box.dataset.who, box.dataset.name]));
  const names = new Map(counts().map(count => [count.id, count.name]));
  return [...list.children].map(li => {
    const { who, counts: split, touches = [] } = JSON.parse(li.firstElementChild.dataset.fill);
    const said = [...who.map(at => people.get(learners[at])), ...[...split.map(([at]) => at), ...touches].map(at => names.get(subjects[at]))];
    return { li, words: fold([li.querySelector('b').textContent, ...said].join(' ')) };
  });
};

const tell = () => {
  const line = document.getElementById('will-save');
  const there = rows().filter(box => box.checked);
  const minutes = minutesOf();
  const own = there.map(box => Number(ownOf(box).value) || minutes);
  const split = counts().filter(c => Number(c.weight.value) > 0).map(c => `${c.name} ${Number(c.weight.value)}`).join(' · ');
  for (const box of rows()) ownOf(box).placeholder = box.checked && minutes ? String(minutes) : 'as all';
  const times = new Set(own).size > 1 ? there.map((box, i) => `${box.dataset.name} ${length(own[i])}`).join(', ')
    : `${named(there.map(box => box.dataset.name))}, ${length(own[0] ?? 0)}${there.length > 1 ? ' each' : ''}`;
  line.hidden = there.length === 0 || own.includes(0) || !split;
  const words = `${times}, ${split}${form.elements.Session.value ? '. Ticks off what is planned.' : ''}`;
  if (!line.hidden && line.textContent !== words) line.textContent = words;
  const heading = form.querySelector('#counts summary > span')?.firstChild;
  const met = counts().filter(c => c.touched?.checked && !(Number(c.weight.value) > 0)).map(c => c.name).join(', ');
  if (heading) heading.textContent = `Counts as: ${split || 'nothing yet'}${met ? `, touches ${met}` : ''} `;
};

export const setMinutes = minutes => {
  const chip = minutes ? form.querySelector(`#length-${minutes}`) : null;
  (chip ?? form.querySelector('#length-other')).checked = true;
  field('OtherLength').value = field('OtherBefore').value = chip ? '' : minutes || '';
  tell();
};

export const take = button => {
  const list = document.getElementById('offers');
  const fill = JSON.parse(button.dataset.fill);
  const [learners, subjects] = listed(list);
  window.htmx?.trigger(field('What'), 'htmx:abort');
  field('What').value = button.querySelector('b').textContent;
  form.elements.Session.value = fill.session ?? '';
  for (const box of rows()) {
    const at = learners.indexOf(box.dataset.who);
    box.checked = fill.who.includes(at);
    ownOf(box).value = fill.own?.[at] ?? '';
  }
  for (const count of counts()) {
    const at = subjects.indexOf(count.id);
    count.weight.value = fill.counts.find(([subject]) => subject === at)?.[1] ?? '';
    if (count.touched) count.touched.checked = fill.touches?.includes(at) ?? false;
  }
  for (const place of form.querySelectorAll('input[name="Input.Place"]')) place.checked = place.value === (fill.place ?? 'Home');
  setMinutes(fill.minutes);
  for (const offers of form.querySelectorAll('.offers')) offers.hidden = true;
  form.querySelector('.actions .primary').focus();
};

export const offerOf = session => session ? [...form.querySelectorAll('#offers button')].find(b => JSON.parse(b.dataset.fill).session === session) : undefined;
export const what = () => field('What');
export const isLog = () => Boolean(form);

/** Makes the log's form on the page answer to taps. */
export function dressQuick() {
  form = document.querySelector('form[data-quick]');
  if (!form) return;
  const offers = wordsOfOffers();
  const show = () => {
    const typed = fold(field('What').value);
    let left = typed.length > 0 ? shownTyped : shownAtOnce;
    for (const { li, words } of offers) {
      li.hidden = left === 0 || !typed.every(t => words.some(w => w.startsWith(t)));
      if (!li.hidden) left -= 1;
    }
    const list = document.getElementById('offers');
    if (list) list.hidden = offers.every(o => o.li.hidden);
  };

  form.querySelector('[data-lookup]')?.remove();
  form.addEventListener('click', event => {
    const button = event.target.closest?.('button');
    if (button?.dataset.fill) take(button);
    if (button && 'heardLearners' in button.dataset) {
      const learners = button.dataset.heardLearners.split(' ').filter(Boolean);
      if (learners.length > 0) for (const box of rows()) box.checked = learners.includes(box.dataset.who);
      if (button.dataset.heardMinutes) setMinutes(Number(button.dataset.heardMinutes));
      tell();
    }
  });
  field('What').addEventListener('input', () => {
    // An emptied field begins anew; what was taken before is let go of.
    if (field('What').value === '') form.elements.Session.value = '';
    show();
  });
  for (const kind of ['input', 'change']) form.addEventListener(kind, tell);
  // What is only asked to help may fail in silence: without a network the page goes on by itself.
  form.addEventListener('htmx:beforeRequest', event => { if (!navigator.onLine) event.preventDefault(); });
  for (const kind of ['htmx:sendError', 'htmx:timeout', 'htmx:responseError']) form.addEventListener(kind, event => event.stopPropagation());
  document.addEventListener('htmx:afterSettle', event => {
    for (const hidden of event.target.querySelectorAll?.('.heard > button, .offers.found') ?? []) hidden.hidden = false;
    if (event.target.id === 'counts') tell();
  });
  for (const hidden of form.querySelectorAll('.heard > button, .offers.found')) hidden.hidden = false;

  // A page that was kept open may be a day old: what it sends is of today.
  const day = field('Date');
  if (form.dataset.day && day.value === form.dataset.day) day.value = today();
  if (field('What').value === '') show();
  tell();
}

dressQuick();
