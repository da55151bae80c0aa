// The lines of a day, and what was sent after the page was made: it does not know of that.
import { all, unseal } from './vault.js';
import { whose } from './outbox.js';
import { replaceWith } from './page.js';

/** What this person's phone sent since the server made this page; nothing for a page that does not say when that was. */
export async function sentSinceMade() {
  const made = Date.parse(document.documentElement.dataset.now ?? '');
  if (!made) return [];
  const { person } = await whose();
  const rows = (await all('items')).filter(row => row.person === person && row.state === 'sent' && Date.parse(row.sentAt) >= made);
  rows.sort((one, other) => one.order - other.order);
  return Promise.all(rows.map(async ({ box, ...row }) => ({ ...row, ...await unseal(box) })));
}

/** Takes the line, what follows it and the standing from the page as it is now. */
export async function refresh(line, address, asked) {
  const answer = await fetch(address, { cache: 'no-store' });
  const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
  const name = line.id.slice('line-'.length);
  const next = page.getElementById(line.id);
  if (!next) throw new Error('gone');
  for (const id of [`wait-${name}`, `look-${name}`, 'standing']) {
    const [old, come] = [document.getElementById(id), page.getElementById(id)];
    if (old && come) replaceWith(old, come, false);
  }
  replaceWith(line, next, asked);
}

/** The line as the server has it, where something else sent what was done there. */
export const renewLine = line => 'sending' in line.dataset ? Promise.resolve() : refresh(line, location.pathname, false).catch(() => {});
