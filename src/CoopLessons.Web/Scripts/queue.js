// The list of what waits on this phone: what it is, since when, how far it came, and why the server did not take it.
import { watch, drop, retry, send, othersWaiting, greet } from './outbox.js';
import { inWords } from './clock.js';
import { dayPath } from './days.js';
import { element } from './element.js';

const button = (words, what, work) => {
  const made = element('button', { type: 'button', className: 'button quiet' }, words, element('span', { className: 'sr-only', textContent: `: ${what}` }));
  made.addEventListener('click', work);
  return made;
};

const kilobytes = bytes => `${Math.ceil(bytes / 1000)} kB`;

/** Where it can be mended: the form that it came from, filled with what was typed. */
const mendAt = item => `${/^\/log\/[0-9a-f-]+\/change/.test(item.action) ? item.action : '/log/new'}?mend=${item.id}`;

function row(item) {
  const state = item.state === 'needs' ? 'needs you' : item.kind === 'piece' && item.sent > 0 ? `${kilobytes(item.sent)} of ${kilobytes(item.size)} sent` : 'waiting';
  const main = element('div', { className: 'row-main' }, element('b', { textContent: item.words }), element('p', { className: 'quiet', textContent: `Kept ${inWords(new Date(item.at))}` }));
  for (const fault of item.state === 'needs' ? item.faults ?? [] : []) main.append(element('p', { className: 'fault', textContent: fault.says }));
  const acts = element('div', { className: 'actions' });
  if (item.state === 'needs') {
    if (item.kind === 'form') acts.append(element('a', { className: 'button', href: mendAt(item) }, 'Mend it', element('span', { className: 'sr-only', textContent: `: ${item.words}` })));
    acts.append(button('Send again', item.words, () => retry(item.id)));
  }
  const away = button('Take off this phone', item.words, () => {
    if (away.dataset.sure) return drop(item.id);
    away.dataset.sure = 'yes';
    away.replaceChildren('It is nowhere else: take it off');
  });
  acts.append(away);
  main.append(acts);
  return element('li', {}, main, element('span', { className: `row-side tag${item.state === 'needs' ? ' look' : ''}`, textContent: state }));
}

async function reachWords() {
  const state = await greet();
  return state === 'signIn' ? 'The server asks you to sign in again. What waits is sent after that.'
    : state === 'away' ? 'The server does not answer now. What waits is sent when it does.'
    : '';
}

/** Shows the list. @param put puts nodes onto the page in the place of what was there. */
export async function showQueue(put) {
  document.title = 'Waiting on this phone · CoopLessons';
  const list = element('div');
  const word = element('p', { className: 'note', hidden: true });
  const signIn = element('p', { className: 'actions', hidden: true }, element('a', { className: 'button primary', href: '/sign-in?back=/phone', textContent: 'Sign in' }));
  const others = element('p', { className: 'quiet', hidden: true });
  put(element('div', { className: 'page-head' }, element('h1', { textContent: 'Waiting on this phone' })), word, signIn, list, others);
  const shown = new Map();
  watch(async items => {
    const count = await othersWaiting();
    others.hidden = count === 0;
    others.textContent = count === 0 ? '' : `${count === 1 ? '1 thing' : `${count} things`} of somebody else who uses this phone ${count === 1 ? 'waits' : 'wait'} too, and ${count === 1 ? 'is' : 'are'} sent when they sign in.`;
    if (items.length === 0) {
      list.replaceChildren(element('div', { className: 'empty' }, element('h2', { textContent: 'Nothing waits' }), element('p', { textContent: 'Whatever is done without a network stands here until the server has it.' }), element('a', { className: 'button primary', href: dayPath(), textContent: 'Today' })));
      return;
    }
    const rows = items.map(item => {
      const key = JSON.stringify([item.state, item.sent, item.faults, item.words]);
      if (shown.get(item.id)?.key !== key) shown.set(item.id, { key, row: row(item) });
      return shown.get(item.id).row;
    });
    if (list.firstElementChild?.tagName !== 'UL') list.replaceChildren(element('ul', { className: 'rows sheet' }));
    list.firstElementChild.replaceChildren(...rows);
  });
  const reachNow = async () => {
    const words = await reachWords();
    word.hidden = words.length === 0;
    if (word.textContent !== words) word.textContent = words;
    signIn.hidden = !words.includes('sign in');
  };
  await reachNow();
  setInterval(reachNow, 20_000);
  send();
}
