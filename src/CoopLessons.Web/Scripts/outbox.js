// What was done without a network waits here and is sent when the server answers: on opening a page, when the browser
// believes that it is connected, and again and again while something waits. Only the server's own word on an item counts.
import { canKeep, all, get, put, change, amend, seal, unseal, sealBytes, unsealBytes } from './vault.js';
import { told, instant } from './clock.js';

const everySeconds = 20;
const patience = 15_000;
const atOnce = 60_000;
const partSize = 512 * 1024;
const away = 'away';
const signIn = 'signIn';
const root = document.documentElement;
const watchers = new Set();
const channel = 'BroadcastChannel' in window ? new BroadcastChannel('outbox') : null;
let here = null;
let running = null;
let again = false;

/** What the server last said of this phone: '', 'away' (no answer of its own) or 'signIn'. */
export let reach = '';

/** Whose phone this is now: as the page says, else as was said last. */
export async function whose() {
  if (root.dataset.person) return { person: root.dataset.person, family: root.dataset.family };
  return await get('facts', 'whose') ?? {};
}

export const uuid = () => crypto.randomUUID();

const ordered = items => items.sort((one, other) => one.order - other.order || (one.id < other.id ? -1 : 1));

/** Everything of this person that is not sent yet, the oldest first, with what it says. */
export async function pending() {
  const { person } = await whose();
  const mine = ordered((await all('items')).filter(item => item.person === person && item.state !== 'sent'));
  return Promise.all(mine.map(async ({ box, ...item }) => ({ ...item, ...await unseal(box) })));
}

/** How many things of other people wait on this phone. */
export async function othersWaiting() {
  const { person } = await whose();
  return (await all('items')).filter(item => item.person !== person && item.state !== 'sent').length;
}

/** Is called with what waits, now and at every change. */
export function watch(watcher) {
  watchers.add(watcher);
  if (canKeep()) pending().then(watcher, () => {});
}

async function tell(elsewhere = true) {
  if (elsewhere) channel?.postMessage('changed');
  const items = await pending();
  for (const watcher of watchers) watcher(items);
}

if (channel) channel.onmessage = () => tell(false).catch(() => {});

async function add(item, said, data) {
  const { person, family } = await whose();
  const row = {
    id: item.id, kind: item.kind, key: item.key ?? null, after: item.after ?? null, person, family, order: Date.now(), state: 'waiting',
    at: instant().toISOString(), size: data?.byteLength ?? 0, sent: 0, box: await seal(said),
  };
  const changes = [['items', item.id, row]];
  if (data) changes.push(['data', item.id, await sealBytes(data)]);
  // A later word on the same thing takes the place of one that was not sent yet.
  if (item.key) {
    for (const older of await all('items')) {
      if (older.key === item.key && older.id !== item.id && older.person === person && older.state === 'waiting') changes.unshift(['items', older.id]);
    }
  }
  await change(changes);
  navigator.storage?.persist?.();
  tell();
}

/** Keeps a form's fields; they are on the disk when this answers. */
export const keepForm = ({ id, action, fields, words, key }) => add({ id, kind: 'form', key }, { action, fields, words });

/** Keeps a photo or file that belongs to an entry, which is sent before it. */
export const putPiece = async ({ id, blob, name, type, fields, after, words }) =>
  add({ id, kind: 'piece', after }, { name, type, fields, words }, await blob.arrayBuffer());

/** Takes an item off the list for good. */
export async function drop(id) {
  const below = (await all('items')).filter(item => item.after === id);
  await change([id, ...below.map(item => item.id)].flatMap(gone => [['items', gone], ['data', gone]]));
  tell();
}

/** Lets an item be sent once more. */
export async function retry(id) {
  await amend('items', id, row => ({ ...row, state: 'waiting' }));
  tell();
  return send();
}

/**
 * Waits until an item is sent or refused, until a sending found no server, or until the time is over: 'sent', 'needs' or
 * 'waiting', and where the server shows it.
 */
export function settled(id, milliseconds, sending) {
  let unanswered = false;
  sending.then(() => { unanswered = reach !== ''; });
  return new Promise(resolve => {
    const end = async () => {
      const row = await get('items', id);
      const state = row?.state ?? 'sent';
      if (state === 'waiting' && Date.now() < until && !unanswered) return;
      clearInterval(timer);
      const said = row ? await unseal(row.box) : {};
      resolve({ state, at: said.sentTo });
    };
    const until = Date.now() + milliseconds;
    const timer = setInterval(end, 60);
    end();
  });
}

async function ask(address, options = {}) {
  const answer = await fetch(address, { cache: 'no-store', redirect: 'manual', signal: AbortSignal.timeout(patience), ...options });
  let word = null;
  try {
    word = await answer.json();
  } catch {
    // A page of somebody else's, or none at all.
  }
  return { status: answer.status, ours: answer.headers.get('CoopLessons') === 'here', word };
}

/** Whom the server knows. Nothing is sent before it said so. */
export async function greet() {
  try {
    const { status, ours, word } = await ask('/phone/here');
    if (status === 401 && word?.signIn) {
      here = null;
      return reach = signIn;
    }
    if (status !== 200 || !ours || !word?.token) return reach = away;
    here = word;
    told(word.now, word.zone);
    await put('facts', 'seen', Date.now());
    // The frame says nothing of anybody: somebody else may have signed in since.
    if ((await whose()).person !== word.person) {
      await put('facts', 'whose', { person: word.person, family: word.family });
      tell();
    }
    return reach = '';
  } catch {
    return reach = away;
  }
}

const headersOf = item => ({
  Accept: 'application/json', 'Kept-Item': item.id, 'Kept-Family': item.family ?? '',
  ...(instant() - Date.parse(item.at) > atOnce ? { 'Kept-At': item.at } : {}),
});

/** The server's word on a form: true where the next one may go. */
async function form(item, action, fields, second = false) {
  const body = new URLSearchParams(fields);
  body.append('__RequestVerificationToken', here.token);
  const { status, ours, word } = await ask(action, { method: 'POST', body, headers: headersOf(item) });
  if (status === 401 && word?.signIn) {
    reach = signIn;
    return false;
  }
  if (word?.item === item.id) {
    // The server has no hand free for it now.
    if (status === 503) return false;
    if (word.staleToken) return !second && await greet() === '' && form(item, action, fields, true);
    return word.saved ? sent(item, word) : refused(item, word.faults);
  }
  // It fails on this one thing: the others need not wait for it.
  if (ours && status === 500) return refused(item, [{ field: '', says: 'The server met a fault of its own. What you did is kept here; send it again later.' }]);
  reach = away;
  return false;
}

async function sent(item, word) {
  const said = await unseal(item.box);
  const box = await seal({ words: said.words, action: said.action, fields: said.fields, sentTo: word.at });
  // A later word may have taken its place while it was under way: then there is no row any more.
  await amend('items', item.id, row => ({ ...row, state: 'sent', sentAt: instant().toISOString(), box }));
  await change([['data', item.id]]);
  // The pages that are kept do not know of it yet: the next page that is opened fetches them.
  await amend('facts', 'pages', row => ({ ...row, at: 0 }));
  tell();
  return true;
}

async function refused(item, faults) {
  const said = await unseal(item.box);
  const box = await seal({ ...said, faults });
  await amend('items', item.id, row => ({ ...row, state: 'needs', box }));
  tell();
  return true;
}

/** A file goes in parts, each from where the server has it; what it holds survives a break. */
async function piece(item, said) {
  const data = await get('data', item.id);
  if (!data) return refused(item, [{ field: '', says: 'The file is not on this phone any more.' }]);
  const bytes = await unsealBytes(data);
  const address = `/evidence/parts/${item.id}`;
  const first = await ask(address, { headers: { Accept: 'application/json' } });
  let held = first.ours && first.word?.item === item.id ? first.word.held : 0;
  let elsewhere = 0;
  while (held < bytes.byteLength) {
    const { status, ours, word } = await ask(`${address}?at=${held}&of=${bytes.byteLength}`, {
      method: 'POST', body: bytes.slice(held, held + partSize), headers: { ...headersOf(item), 'Content-Type': 'application/octet-stream', RequestVerificationToken: here.token },
    });
    if (status === 401 && word?.signIn) {
      reach = signIn;
      return false;
    }
    if (word?.item === item.id && typeof word.held === 'number' && (status === 200 || status === 409)) {
      // It holds less than was just said, or other parts than this one: later, from where it stands then.
      if (status === 200 ? word.held <= held : ++elsewhere > 2) return false;
      held = word.held;
    } else if (word?.item === item.id && word.faults) {
      return refused(item, word.faults);
    } else {
      if (ours && status >= 400 && status < 500) return refused(item, [{ field: '', says: status === 413 ? 'The file is larger than the server takes.' : 'The server does not take this file.' }]);
      reach = away;
      return false;
    }
    await amend('items', item.id, row => ({ ...row, sent: held }));
    tell();
  }
  return form(item, `/evidence/take/${item.id}`, await joined(item, said.fields));
}

/** Where what it belongs to became part of an entry that was there already, the server said of which. */
async function joined(item, fields) {
  const above = item.after && await get('items', item.after);
  const entry = above?.state === 'sent' && /^\/log\/([0-9a-f-]{36})$/.exec((await unseal(above.box)).sentTo ?? '')?.[1];
  return entry ? fields.map(([name, value]) => [name, name === 'entryId' ? entry : value]) : fields;
}

async function deliver(item) {
  const said = await unseal(item.box);
  return item.kind === 'piece' ? piece(item, said) : form(item, said.action, said.fields);
}

async function drain() {
  const rows = await all('items');
  if (!rows.some(row => row.state === 'waiting')) return;
  if (await greet() !== '') return tell();
  const tried = new Set();
  for (;;) {
    const now = await all('items');
    const held = new Set(now.filter(row => row.state !== 'sent').map(row => row.id));
    const next = ordered(now.filter(row => row.state === 'waiting' && row.person === here.person && row.family === here.family && !tried.has(row.id) && !held.has(row.after)))[0];
    if (!next) break;
    tried.add(next.id);
    try {
      if (!await deliver(next)) break;
    } catch {
      reach = away;
      break;
    }
  }
  await forgetSent();
  tell();
}

// What was sent stays a day, so that whoever looks sees that it arrived.
async function forgetSent() {
  const old = (await all('items')).filter(row => row.state === 'sent' && Date.now() - row.order > 86_400_000);
  if (old.length > 0) await change(old.map(row => ['items', row.id]));
}

/** Sends what waits. One tab of a browser sends at a time. */
export function send() {
  if (!canKeep()) return Promise.resolve();
  if (running) {
    again = true;
    return running;
  }
  const work = () => drain().catch(() => {});
  running = (navigator.locks ? navigator.locks.request('outbox', work) : work()).finally(() => {
    running = null;
    if (again) {
      again = false;
      send();
    }
  });
  return running;
}

if (canKeep()) {
  if (root.dataset.person) put('facts', 'whose', { person: root.dataset.person, family: root.dataset.family }).catch(() => {});
  window.addEventListener('online', send);
  document.addEventListener('visibilitychange', () => { if (!document.hidden) send(); });
  setInterval(() => { if (!document.hidden) send(); }, everySeconds * 1000);
  send();
}
