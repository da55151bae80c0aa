// Without an answer from the server the browser shows a frame that says nothing of anybody; this puts the kept page into it.
import { canKeep } from './vault.js';
import { greet, pending, send } from './outbox.js';
import { keptPage, keptPaths, keptSince } from './pages.js';
import { inWords, today } from './clock.js';
import { keptPath } from './days.js';
import { showQueue } from './queue.js';
import { dress, showNote } from './page.js';
import { mark } from './marks.js';
import { dressBasket } from './basket.js';
import { dressQuick, offerOf, take } from './quick.js';
import { dressClocks } from './stopwatch.js';
import { mend } from './mend.js';
import { element } from './element.js';

const everySeconds = 15;
const place = document.getElementById('kept');

/** Puts something in the place of whatever the frame held. */
const put = (...nodes) => {
  const main = place.parentElement ?? document.getElementById('main');
  for (const one of [...main.children]) if (!['said', 'heard'].includes(one.id)) one.remove();
  main.append(...nodes);
  return main;
};

/** A link to what is not kept leads nowhere: its words stay, but a way out goes. */
function unlink(content, paths) {
  for (const link of content.querySelectorAll('a[href^="/"]')) {
    const path = keptPath(new URL(link.getAttribute('href'), location.origin).pathname);
    if (path === '/phone' || paths.includes(path)) continue;
    if (link.matches('.button, .crumb, .no-print *')) (link.closest('p.no-print') ?? link).remove();
    else link.removeAttribute('href');
  }
}

/** Takes away what only the server can do, and sets days to today. */
function fit(content, path, paths) {
  unlink(content, paths);
  for (const form of content.querySelectorAll('form:not([data-keep]):not(#basket)')) form.remove();
  for (const one of content.querySelectorAll('[hx-get], [hx-post]')) for (const name of ['hx-get', 'hx-post', 'hx-target', 'hx-swap', 'hx-trigger']) one.removeAttribute(name);
  const date = content.querySelector('input[name="Input.Date"]');
  if (date && path === '/log/new') date.value = new URLSearchParams(location.search).get('date') ?? today();
  const strip = content.querySelector('.strip[data-day-of]');
  if (strip && strip.dataset.dayOf > today()) for (const act of strip.querySelectorAll('form')) act.remove();
}

async function show() {
  const path = keptPath(location.pathname);
  for (const link of document.querySelectorAll('nav.places a')) if (keptPath(new URL(link.href).pathname) === path) link.setAttribute('aria-current', 'page');
  const paths = await keptPaths();
  for (const link of document.querySelectorAll('[data-guardian]')) link.hidden = !paths.some(kept => kept.startsWith('/week/shopping/'));
  if (path === '/phone') return showQueue(put);
  const page = await keptPage(path);
  if (!page) return lacks(paths);
  document.title = `${page.title} · CoopLessons`;
  const content = document.createElement('div');
  content.append(...[...page.body.childNodes].map(node => document.adoptNode(node)));
  fit(content, path, paths);
  dress(put(...content.childNodes));
  dressBasket();
  dressQuick();
  const session = new URLSearchParams(location.search).get('session');
  const planned = path === '/log/new' && session ? offerOf(session) : null;
  if (planned) take(planned);
  dressClocks();
  const since = await keptSince();
  showNote(`The server does not answer. This is as it was on ${inWords(new Date(since))}; what you do here is kept and sent later.`, true);
  await mend();
  mark(await pending());
  listen();
}

function lacks(paths) {
  const days = paths.filter(path => /^\/today\/[\d-]+$/.test(path) && path >= `/today/${today()}`);
  put(
    element('div', { className: 'page-head' }, element('h1', { textContent: 'Not kept on this phone' })),
    element('p', { textContent: days.length > 0 ? 'The server does not answer, and this page is not one of those that the phone keeps. These are:' : 'The server does not answer, and nothing is kept on this phone. Sign in once while it answers, and the coming days are kept.' }),
    element('ul', { className: 'rows' }, ...days.map(path => element('li', {}, element('a', { className: 'row-link', href: path, textContent: path === `/today/${today()}` ? 'Today' : inWords(new Date(`${path.slice(7)}T12:00:00Z`)).split(',')[0] })))),
  );
  listen();
}

/** When the server answers again, the page as it is there takes this one's place, unless something is being typed. */
function listen() {
  let typed = false;
  document.addEventListener('input', () => { typed = true; });
  const look = async () => {
    if (document.hidden || await greet() === 'away') return;
    await send();
    if (typed) showNote('The server answers again.', true);
    else location.reload();
  };
  window.addEventListener('online', look);
  setInterval(look, everySeconds * 1000);
}

if (place && canKeep()) show();
