// What the phone keeps, sealed: pages of the coming days and what waits to be sent. The key is made here and cannot be
// taken out of the browser. Only ids and states lie open.
const stores = ['keys', 'items', 'data', 'pages', 'facts'];
let opening;

/** Whether anything can be kept here at all; a page that came unprotected over a network keeps nothing. */
export const canKeep = () => Boolean(window.isSecureContext && window.indexedDB && window.crypto?.subtle);

const open = () => opening ??= new Promise((resolve, reject) => {
  const request = indexedDB.open('cooplessons', 1);
  request.onupgradeneeded = () => stores.forEach(store => request.result.createObjectStore(store));
  request.onsuccess = () => {
    // Another tab with a newer program, or one that wipes everything, is not held up.
    request.result.onversionchange = () => {
      request.result.close();
      opening = null;
    };
    resolve(request.result);
  };
  request.onerror = () => {
    opening = null;
    reject(request.error);
  };
});

/** Does some work in one transaction; what it asked for is on the disk when this answers. */
async function within(names, mode, work) {
  const db = await open();
  return new Promise((resolve, reject) => {
    const transaction = db.transaction(names, mode, { durability: 'strict' });
    let answer;
    transaction.oncomplete = () => resolve(answer);
    transaction.onerror = transaction.onabort = () => reject(transaction.error);
    work(name => transaction.objectStore(name), value => { answer = value; });
  });
}

const asked = (request, then) => { request.onsuccess = () => then(request.result); };

export const get = (store, key) => within([store], 'readonly', (of, answer) => asked(of(store).get(key), answer));

export const all = store => within([store], 'readonly', (of, answer) => asked(of(store).getAll(), answer));

export const put = (store, key, value) => within([store], 'readwrite', of => { of(store).put(value, key); });

/** Several changes at once, all or none: [store, key, value], where no value takes away. */
export const change = changes => within([...new Set(changes.map(([store]) => store))], 'readwrite', of => {
  for (const [store, key, value] of changes) {
    if (value === undefined) of(store).delete(key);
    else of(store).put(value, key);
  }
});

/** Reads and writes a row in one step, so that no other tab comes between. */
export const amend = (store, key, how) => within([store], 'readwrite', of => asked(of(store).get(key), row => {
  const next = row && how(row);
  if (next) of(store).put(next, key);
}));

async function key() {
  const kept = await get('keys', 'seal');
  if (kept) return kept;
  const made = await crypto.subtle.generateKey({ name: 'AES-GCM', length: 256 }, false, ['encrypt', 'decrypt']);
  // Another tab may have made one meanwhile; the first holds.
  return within(['keys'], 'readwrite', (of, answer) => asked(of('keys').get('seal'), first => {
    if (!first) of('keys').put(made, 'seal');
    answer(first ?? made);
  }));
}

export async function sealBytes(bytes) {
  const iv = crypto.getRandomValues(new Uint8Array(12));
  return { iv, box: await crypto.subtle.encrypt({ name: 'AES-GCM', iv }, await key(), bytes) };
}

export const unsealBytes = async ({ iv, box }) => crypto.subtle.decrypt({ name: 'AES-GCM', iv }, await key(), box);

export const seal = value => sealBytes(new TextEncoder().encode(JSON.stringify(value)));

export const unseal = async sealed => JSON.parse(new TextDecoder().decode(await unsealBytes(sealed)));

/** Takes away every kept page. What waits to be sent stays: it is nowhere else. */
export const forgetPages = () => within(['pages', 'facts'], 'readwrite', of => {
  of('pages').clear();
  of('facts').delete('pages');
});
