import htmx from 'htmx.org';

const failed = 'That did not reach the server. Nothing was changed; try again.';
const heard = () => document.getElementById('heard');

const speak = text => {
  const region = heard();
  if (!region || !text) return;
  region.textContent = '';
  requestAnimationFrame(() => { region.textContent = text; });
};

/** A sentence at the head of the page; calm where nothing is to be looked at. */
export const showNote = (text, calm = false) => {
  const region = document.getElementById('said');
  if (!region) return;
  const note = document.createElement('p');
  note.className = calm ? 'note' : 'note look';
  note.textContent = text;
  region.replaceChildren(note);
};

const clearNote = () => {
  const note = document.querySelector('#said > .note.look');
  if (note && note.textContent === failed) note.remove();
};

const within = (root, selector) =>
  root.matches?.(selector) ? root : root.querySelector?.(selector) ?? null;

const focusOn = element => {
  if (!element.matches('a[href], button, input, select, textarea, summary, [tabindex]')) element.tabIndex = -1;
  element.focus();
};

// Without an element of its own to go to, the focus moves only when what held it is gone.
// Pieces swapped elsewhere settle too; the place that was asked for comes first. A button in it is never chosen, so that a
// second press of Enter cannot undo what the first one did.
const arrived = (came, place, asked) => {
  const words = within(came, '[data-announce]');
  if (words) speak(words.dataset.announce);
  if (!asked) return;
  const named = within(came, '[data-focus]');
  const lost = !document.activeElement || document.activeElement === document.body;
  const target = named ?? (lost ? within(place, 'h1, h2, h3') ?? place : null);
  if (target) focusOn(target);
};

document.addEventListener('htmx:afterSettle', event => {
  const came = event.target;
  if (came instanceof Element) arrived(came, document.getElementById(event.detail.target?.id) ?? came, event.detail.requestConfig?.triggeringEvent);
});

/** Puts a piece of another page in the place of one of this page's. */
export const replaceWith = (old, come, asked) => {
  const next = document.adoptNode(come);
  old.replaceWith(next);
  htmx.process(next);
  dress(next);
  arrived(next, next, asked);
};

// A network that wants to be paid or signed into first answers with a page of its own, which must not take the place of ours.
document.addEventListener('htmx:beforeSwap', event => {
  if (event.detail.xhr.getResponseHeader('CoopLessons') === 'here') return;
  event.detail.shouldSwap = false;
  event.detail.isError = true;
});
document.addEventListener('htmx:responseError', () => showNote(failed));
document.addEventListener('htmx:sendError', () => showNote(failed));
document.addEventListener('htmx:timeout', () => showNote(failed));
document.addEventListener('htmx:afterRequest', event => { if (event.detail.successful) clearNote(); });

// The button's own name and value are read after this event, so it is locked one turn later.
const sent = new Set();
document.addEventListener('submit', event => {
  const form = event.target;
  if (event.defaultPrevented || form.method !== 'post' || form.target || 'again' in form.dataset) return;
  if (sent.has(form)) {
    event.preventDefault();
    return;
  }
  sent.add(form);
  const button = event.submitter;
  if (button) setTimeout(() => { button.disabled = true; });
});
window.addEventListener('pageshow', () => {
  for (const form of sent) {
    for (const element of form.elements) if (element.type === 'submit') element.disabled = false;
  }
  sent.clear();
});

const addReveal = input => {
  if (input.closest('.reveal')) return;
  const row = document.createElement('div');
  row.className = 'reveal';
  input.replaceWith(row);
  const button = document.createElement('button');
  button.type = 'button';
  button.className = 'button';
  button.textContent = 'Show';
  button.setAttribute('aria-label', 'Show password');
  button.setAttribute('aria-pressed', 'false');
  if (input.id) button.setAttribute('aria-controls', input.id);
  button.addEventListener('click', () => {
    const shown = input.type === 'password';
    input.type = shown ? 'text' : 'password';
    button.textContent = shown ? 'Hide' : 'Show';
    button.setAttribute('aria-pressed', String(shown));
  });
  input.form?.addEventListener('submit', () => { input.type = 'password'; });
  row.append(input, button);
};

/** Gives what came onto the page what only scripts can give. */
export const dress = root => {
  const all = selector => [...(root.matches?.(selector) ? [root] : []), ...root.querySelectorAll(selector)];
  for (const input of all('input[data-reveal]')) addReveal(input);
  for (const button of all('[data-print]')) button.hidden = false;
  for (const bar of all('.undo:not(.is-old)')) setTimeout(() => bar.classList.add('is-old'), 10_000);
};

document.addEventListener('click', event => {
  if (event.target.closest?.('[data-print]')) window.print();
  for (const menu of document.querySelectorAll('details.menu[open]')) {
    if (!menu.contains(event.target)) menu.open = false;
  }
});
document.addEventListener('keydown', event => {
  if (event.key !== 'Escape') return;
  for (const menu of document.querySelectorAll('details.menu[open]')) {
    menu.open = false;
    menu.querySelector('summary').focus();
  }
});
// A session of the week is carried to another day with the mouse; its own page does the same by touch and keyboard.
let carried = null;
const dayOf = event => event.target.closest?.('[data-day]') ?? null;
document.addEventListener('dragstart', event => {
  carried = event.target.closest?.('[data-carry]') ?? null;
  if (carried) event.dataTransfer.effectAllowed = 'move';
});
document.addEventListener('dragover', event => {
  if (!carried || !dayOf(event)) return;
  event.preventDefault();
  for (const day of document.querySelectorAll('.is-aimed-at')) day.classList.remove('is-aimed-at');
  dayOf(event).classList.add('is-aimed-at');
});
document.addEventListener('drop', event => {
  const day = dayOf(event);
  const form = document.getElementById('carry');
  if (!carried || !day || !form) return;
  event.preventDefault();
  if (day.contains(carried)) return;
  form.action = `/week/drop/${carried.dataset.carry}`;
  form.elements.day.value = day.dataset.day;
  form.requestSubmit();
});
document.addEventListener('dragend', () => {
  carried = null;
  for (const day of document.querySelectorAll('.is-aimed-at')) day.classList.remove('is-aimed-at');
});
document.addEventListener('htmx:load', event => dress(event.detail.elt));

dress(document);
// Words that were on the page from the start are not spoken; saying them once more makes them heard.
speak(document.getElementById('said')?.textContent.trim());
