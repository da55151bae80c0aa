// Ticks of the shopping list: each is kept on the phone and sent at once where the server answers. Only its own word counts
// as saved.
import { canKeep } from './vault.js';
import { keepForm, pending, send, uuid, watch } from './outbox.js';
import { sentSinceMade } from './lines.js';

const handler = 'Ticks';

const tickOf = item => item.action?.includes(`handler=${handler}`) ? item.fields[0] : null;

/** Makes the list on the page tick by itself. */
export function dressBasket() {
  const form = document.getElementById('basket');
  const waiting = document.getElementById('waiting');
  if (!form || !waiting || !canKeep()) return;
  const boxes = [...form.querySelectorAll('[data-tick]')];
  const ofThisList = items => items.filter(item => tickOf(item) && item.action === form.dataset.ticks);

  const tell = items => {
    const mine = ofThisList(items);
    const refused = mine.find(item => item.state === 'needs');
    const words = refused ? `A tick could not be saved: ${refused.faults[0]?.says}` : mine.length === 1 ? '1 tick waits for the network.' : `${mine.length} ticks wait for the network.`;
    waiting.hidden = mine.length === 0;
    if (mine.length > 0 && waiting.textContent !== words) waiting.textContent = words;
  };

  const show = (id, on) => {
    for (const box of boxes) if (box.value === id) box.checked = on;
  };

  form.addEventListener('change', async event => {
    const box = event.target;
    if (!box.matches?.('[data-tick]')) return;
    show(box.value, box.checked);
    await keepForm({ id: uuid(), key: `${form.dataset.ticks} ${box.value}`, action: form.dataset.ticks, fields: [[box.checked ? 'on' : 'off', box.value]], words: box.closest('label')?.textContent.trim() || 'Shopping list' });
    send();
  });
  for (const button of form.querySelectorAll('[data-save]')) button.hidden = true;
  // What is sent while the page comes stands on neither: not on the page, and not among what waits.
  Promise.all([pending(), sentSinceMade()]).then(([waits, sent]) => {
    for (const item of ofThisList([...sent, ...waits])) {
      const [how, id] = tickOf(item);
      show(id, how === 'on');
    }
  });
  watch(tell);
}

dressBasket();
