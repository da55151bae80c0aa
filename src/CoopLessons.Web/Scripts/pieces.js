// Photos and files: shown as soon as they are chosen, and handed to the queue that sends them in the background. Where the
// phone keeps nothing (a private window), the form goes out as any form does.
import { element } from './element.js';
import { canKeep } from './vault.js';
import { putPiece, send, uuid, watch } from './outbox.js';

const clock = when => {
  const two = n => String(n).padStart(2, '0');
  return `${when.getFullYear()}-${two(when.getMonth() + 1)}-${two(when.getDate())}T${two(when.getHours())}:${two(when.getMinutes())}`;
};

const forms = new WeakMap();
let fields = 0;

const line = (file, remove) => {
  const look = file.type.startsWith('image/')
    ? element('img', { src: URL.createObjectURL(file), alt: '' })
    : element('span', { className: 'piece-kind', textContent: file.type === 'application/pdf' ? 'PDF' : file.type.split('/')[0] || 'file' });
  // What the browser cannot show may still be kept; its kind stands there instead.
  look.addEventListener('error', () => look.replaceWith(element('span', { className: 'piece-kind', textContent: 'picture' })));
  const id = `caption-${++fields}`;
  const caption = element('input', { id, maxLength: 200, autocomplete: 'off' });
  const button = element('button', { type: 'button', className: 'button small', textContent: 'Leave it out' });
  button.setAttribute('aria-label', `Leave out ${file.name}`);
  const row = element('li', {}, look, element('div', { className: 'field' }, element('label', { htmlFor: id, textContent: `Caption of ${file.name}` }), caption), button);
  const item = { id: uuid(), file, caption, row };
  button.addEventListener('click', () => {
    if (look.src) URL.revokeObjectURL(look.src);
    remove(item);
  });
  return item;
};

// The files that stay chosen, so that the form without the queue sends just these.
const setFiles = (input, items) => {
  const kept = new DataTransfer();
  for (const { file } of items) kept.items.add(file);
  input.files = kept.files;
};

const choose = input => {
  const form = input.form;
  let chosen = forms.get(form);
  if (!chosen) {
    chosen = { input, items: [], list: element('ul', { className: 'chosen' }) };
    forms.set(form, chosen);
    input.after(chosen.list);
  }
  const remove = item => {
    chosen.items = chosen.items.filter(i => i !== item);
    item.row.remove();
    setFiles(input, chosen.items);
    input.focus();
  };
  // A second choice adds to the first, as a second photo from the camera does.
  const come = [...input.files].filter(f => !chosen.items.some(i => i.file.name === f.name && i.file.size === f.size && i.file.lastModified === f.lastModified));
  const most = Number(input.dataset.most) || Infinity;
  const tooLarge = come.filter(f => f.size > most).map(f => f.name);
  document.getElementById(`${input.id}-fault`).textContent = tooLarge.length > 0 ? `${tooLarge.join(', ')}: larger than ${most / 1_000_000} megabytes, and left out.` : '';
  const added = come.filter(f => f.size <= most).map(f => line(f, remove));
  chosen.items.push(...added);
  chosen.list.append(...added.map(i => i.row));
  setFiles(input, chosen.items);
};

const put = (item, fields, after) => putPiece({
  id: item.id, blob: item.file, name: item.file.name, type: item.file.type, after, words: item.caption.value.trim() || item.file.name,
  fields: [...fields, ['caption', item.caption.value.trim()], ['name', item.file.name], ['taken', clock(new Date(item.file.lastModified))]],
});

if (canKeep()) {
  document.addEventListener('change', event => {
    const input = event.target;
    if (input.type === 'file' && input.form && ('keep' in input.form.dataset || 'pieces' in input.form.dataset)) choose(input);
  });

  // A form that is kept takes its files with it; what is said of them follows from the entry.
  document.addEventListener('keep', event => {
    const chosen = forms.get(event.target);
    for (const item of chosen?.items ?? []) event.detail.waits.push(put(item, [['entryId', event.detail.id]], event.detail.id));
  });

  // A form of nothing but files is not sent itself: it says everything of each of them.
  document.addEventListener('submit', async event => {
    const form = event.target;
    const chosen = forms.get(form);
    if (!('pieces' in form.dataset) || !chosen?.items.length || chosen.busy) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    chosen.busy = true;
    const said = [...new FormData(form)].filter(([name, value]) => typeof value === 'string' && value && name !== 'Id' && name !== 'Caption' && !name.startsWith('__'));
    const common = form.elements.Caption?.value.trim() ?? '';
    try {
      while (chosen.items.length > 0) {
        const [item] = chosen.items;
        item.caption.value ||= common;
        await put(item, said, null);
        chosen.items.shift();
        item.row.remove();
      }
      send();
      location.assign(form.dataset.pieces);
    } catch {
      // No room on the phone. What is in the queue is on its way; the rest goes as any form does.
      setFiles(chosen.input, chosen.items);
      HTMLFormElement.prototype.submit.call(form);
    }
  }, true);
}

// Pieces on their way, where a page has a place for them.
const places = document.querySelectorAll('[data-sending]');
let before = 0;
if (places.length > 0 && canKeep()) {
  watch(items => {
    const all = items.filter(i => i.kind === 'piece');
    for (const place of places) {
      const entry = place.dataset.sending;
      const pieces = all.filter(i => !entry || i.after === entry || i.fields.some(([name, value]) => name.toLowerCase() === 'entryid' && value === entry));
      place.hidden = pieces.length === 0 && before === 0;
      place.querySelector('ul').replaceChildren(...(pieces.length === 0 && before > 0
        ? [element('li', {}, element('a', { className: 'button', href: '', textContent: 'All arrived. Show them' }))]
        : pieces.map(p => element('li', {}, element('span', { className: 'row-main', textContent: p.words }), element('span', { className: 'row-side' }, p.state === 'needs'
          ? element('a', { href: '/phone', textContent: 'Look at it' })
          : p.sent > 0 ? element('progress', { max: p.size || 1, value: p.sent, ariaLabel: `${p.words}, on its way` }) : 'waits for the network')))));
    }
    before = Math.max(before, all.length);
  });
}
