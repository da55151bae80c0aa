// The service worker. It keeps the files that every page is made of and a frame that says nothing of anybody; pages with a
// family's words are never in its cache. `version` stands before this, written by the server: it is another one when any of
// the files is.
/* global version */
import './worker-notices.js';
const shell = '/phone';
const store = `shell ${version}`;
const patience = 6000;

self.addEventListener('install', event => event.waitUntil(fill().then(() => self.skipWaiting())));

async function fill() {
  // Asked for as a stranger, so that it holds no name.
  const frame = await fetch(shell, { credentials: 'omit', cache: 'no-cache' });
  if (!isOurs(frame) || frame.status !== 200) throw new Error('The frame did not come.');
  const named = (await frame.clone().text()).matchAll(/(?:href|src)="(\/[^"]+\.(?:css|js|woff2|svg))"/g);
  const cache = await caches.open(store);
  // The page that asked for this worker has brought them already: they come from the browser's own cache.
  await cache.addAll([...new Set([...named].map(([, path]) => path))].map(path => new Request(path, { cache: 'force-cache' })));
  await cache.put(shell, frame);
}

self.addEventListener('activate', event => event.waitUntil((async () => {
  for (const name of await caches.keys()) if (name !== store) await caches.delete(name);
  await self.clients.claim();
})()));

/** Whether this server answered, and not whatever stands between. */
const isOurs = answer => answer.headers.get('CoopLessons') === 'here';

/** Pages that the phone keeps: for these nobody waits long. */
const isKept = path => /^\/($|today|log\/|week\/shopping\/|phone$)/.test(path);

self.addEventListener('fetch', event => {
  const { request } = event;
  const address = new URL(request.url);
  if (request.method !== 'GET' || address.origin !== self.location.origin || address.searchParams.has('portal')) return;
  if (request.mode === 'navigate') event.respondWith(page(request, address));
  else if (/^\/(lib\/|favicon)/.test(address.pathname)) event.respondWith(file(request));
});

async function page(request, address) {
  try {
    const limit = isKept(address.pathname) ? AbortSignal.timeout(patience) : undefined;
    const answer = await fetch(request, { signal: limit });
    // A redirect is the browser's to follow. Anything else without our mark comes from a gateway or a network's own page.
    if (answer.type === 'opaqueredirect' || isOurs(answer)) return answer;
  } catch {
    // No network, or none that answers.
  }
  return await caches.match(shell) ?? Response.error();
}

async function file(request) {
  const cache = await caches.open(store);
  const kept = await cache.match(request);
  if (kept) return kept;
  try {
    const answer = await fetch(request);
    if (isOurs(answer) && answer.status === 200) await cache.put(request, answer.clone());
    return answer;
  } catch {
    return Response.error();
  }
}
