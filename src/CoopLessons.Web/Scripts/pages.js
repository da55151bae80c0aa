// The pages of the coming days, fetched while there is a network and kept sealed for when there is none.
import { canKeep, all, get, change, seal, unseal, forgetPages } from './vault.js';
import { whose } from './outbox.js';
import { instant, today } from './clock.js';

const everyMinutes = 10;
const mostDays = 14;
const root = document.documentElement;

/** Fetches them where they may be other than those that are kept. */
export async function renew() {
  const { person } = await whose();
  const kept = await get('facts', 'pages');
  if (!person || kept?.person === person && Date.now() - kept.at < everyMinutes * 60_000) return;
  const old = await all('pages');
  const mine = new Map(old.filter(page => page.person === person).map(page => [page.path, page]));
  const answer = await fetch('/phone/pages', { cache: 'no-store', headers: { 'Kept-Pages': [...mine.values()].map(page => page.tag).join(' ') } });
  if (answer.status === 401) return forgetPages();
  if (answer.headers.get('CoopLessons') !== 'here') return;
  if (answer.status !== 200) return;
  const { pages, person: owner, family } = await answer.json();
  if (owner !== person) return;
  // What is as it was comes without its text.
  const sealed = await Promise.all(pages.map(async ({ html, ...page }) => ({ ...page, person, box: html ? await seal(html) : mine.get(page.path)?.box })));
  await change([
    ...old.map(page => ['pages', page.path]),
    ...sealed.filter(page => page.box).map(page => ['pages', page.path, page]),
    ['facts', 'pages', { person, family, at: Date.now(), as: instant().toISOString() }],
  ]);
}

/** A kept page as the server made it, or null; what is too old goes. */
export async function keptPage(path) {
  await forgetOld();
  const { person } = await whose();
  const page = await get('pages', path);
  return page && page.person === person ? new DOMParser().parseFromString(await unseal(page.box), 'text/html') : null;
}

/** Addresses that are kept. */
export async function keptPaths() {
  const { person } = await whose();
  return (await all('pages')).filter(page => page.person === person).map(page => page.path);
}

/** The instant at which the kept pages were as they are, by the server's clock. */
export const keptSince = async () => (await get('facts', 'pages'))?.as;

async function forgetOld() {
  const seen = await get('facts', 'seen') ?? (await get('facts', 'pages'))?.at;
  if (seen && Date.now() - seen > mostDays * 86_400_000) return forgetPages();
  const day = today();
  const over = (await all('pages')).filter(page => page.until && page.until < day);
  if (over.length > 0) await change(over.map(page => ['pages', page.path]));
}

if (canKeep() && root.dataset.person) {
  forgetOld().catch(() => {});
  navigator.serviceWorker?.register('/worker.js').catch(() => {});
  const soon = window.requestIdleCallback ?? (work => setTimeout(work, 1500));
  window.addEventListener('load', () => soon(() => renew().catch(() => {})));
}
