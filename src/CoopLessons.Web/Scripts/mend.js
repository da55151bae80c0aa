// A form filled with what was kept and refused, and the reasons beside its fields.
import { canKeep } from './vault.js';
import { pending } from './outbox.js';
import { dress, showNote } from './page.js';
import { element } from './element.js';

function fill(form, fields) {
  const said = new Map();
  for (const [name, value] of fields) said.set(name, [...said.get(name) ?? [], value]);
  for (const field of form.elements) {
    if (!field.name || field.name === '__RequestVerificationToken') continue;
    const values = said.get(field.name);
    if (field.type === 'checkbox' || field.type === 'radio') {
      if (values || field.type === 'checkbox') field.checked = Boolean(values?.includes(field.value));
    } else if (values && field.type !== 'file') {
      field.value = values[0];
    }
  }
}

/** A checkbox has a hidden field of its name behind it: that one says false and nothing else. */
const isShadow = field => field.type === 'hidden' && field.value === 'false';

function tell(form, faults) {
  const head = [];
  for (const { field, says } of faults) {
    const beside = [...form.elements].find(one => one.name === field && !isShadow(one));
    if (!beside) {
      head.push(says);
      continue;
    }
    beside.setAttribute('aria-invalid', 'true');
    beside.closest('.field, fieldset')?.append(element('span', { className: 'fault', textContent: says }));
  }
  if (head.length > 0) showNote(head.join(' '));
}

/** Fills the page's form from the item that its address names. */
export async function mend() {
  const id = new URLSearchParams(location.search).get('mend');
  const form = document.querySelector('main form[data-keep]:not([data-line])');
  if (!id || !form) return;
  const item = (await pending()).find(one => one.id === id);
  if (!item) return;
  const isEntry = item.fields.some(([name]) => name.startsWith('Input.'));
  fill(form, isEntry ? item.fields : [['Input.What', item.words]]);
  // It goes out under its own id, and so takes the place of what was refused.
  const minted = form.querySelector('[data-mint]');
  if (minted) minted.value = id;
  dress(form);
  tell(form, item.faults ?? []);
}

if (canKeep() && !('shell' in document.documentElement.dataset)) mend();
