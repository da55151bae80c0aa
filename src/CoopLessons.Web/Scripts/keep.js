// Forms marked data-keep: what they say is kept on the phone first and sent at once where the server answers. Without an
// answer it waits, and the page says so.
import { canKeep, forgetPages } from './vault.js';
import { keepForm, drop, othersWaiting, pending, send, settled, uuid } from './outbox.js';
import { renew } from './pages.js';
import { element } from './element.js';
import { refresh } from './lines.js';
import { showNote } from './page.js';

const shell = 'shell' in document.documentElement.dataset;
const answerWithin = 5000;
const token = '__RequestVerificationToken';
const underWay = new WeakSet();

/** The form's words for the list of what waits: {Name} stands for what was typed there. */
const wordsOf = (form, data) => form.dataset.keep.replace(/\{([\w.]+)\}/g, (_, name) => String(data.get(name) ?? '')).trim() || document.title;

function idOf(form) {
  for (const field of form.querySelectorAll('[data-mint]')) if (!field.value) field.value = uuid();
  return form.querySelector('[data-mint]')?.value || uuid();
}

/** Sends the form as if there were no script, so that the page comes back with messages beside its fields. */
function sendPlainly(form) {
  underWay.add(form);
  HTMLFormElement.prototype.submit.call(form);
}

async function keep(form, submitter) {
  const id = idOf(form);
  const data = new FormData(form, submitter);
  const fields = [...data].filter(([name, value]) => name !== token && typeof value === 'string');
  const action = form.getAttribute('action') || location.pathname + location.search;
  const words = wordsOf(form, data);
  if (form.hasAttribute('data-line')) form.closest('li').dataset.sending = '';
  // Photos that belong to it are kept with it.
  const waits = [];
  form.dispatchEvent(new CustomEvent('keep', { bubbles: true, detail: { id, waits } }));
  try {
    await keepForm({ id, action, fields, words });
    await Promise.all(waits);
  } catch {
    if (!shell) return sendPlainly(form);
    return showNote('This phone has no room left. Nothing was changed; what you typed is still here.');
  }
  const end = await settled(id, answerWithin, send());
  return form.hasAttribute('data-line') ? lineEnds(form, end) : pageEnds(form, id, end);
}

async function lineEnds(form, end) {
  const line = form.closest('li');
  if (end.state === 'sent' && !shell) {
    const session = form.elements.sessionId.value;
    try {
      await refresh(line, `${new URL(form.action).pathname}?just=${session}`, true);
      renew().catch(() => {});
      return;
    } catch {
      // It is saved; the page is old until it is opened anew.
    }
  }
  delete line.dataset.sending;
  line.dispatchEvent(new CustomEvent('marked', { bubbles: true }));
}

async function pageEnds(form, id, end) {
  if (end.state === 'needs') {
    if (shell) return location.assign('/phone');
    // The page itself tells what is missing, beside the fields; nothing of it waits any more.
    await drop(id);
    return sendPlainly(form);
  }
  // What it says of something that it has stands on the page that follows.
  if (end.state !== 'sent') sessionStorage.setItem('said', 'It is kept on this phone and is sent when the server answers.');
  location.assign(end.state === 'sent' && end.at ? end.at : '/today');
}

async function askBeforeSignOut(form) {
  const [mine, others] = [await pending(), await othersWaiting()];
  if (mine.length > 0 && !form.dataset.sure) {
    form.dataset.sure = 'yes';
    const note = mine.length === 1 ? '1 thing is' : `${mine.length} things are`;
    showNote(`${note} not sent yet and would be lost from this phone. Send them first, or press the button once more.`);
    send();
    return;
  }
  if (others > 0) form.append(element('input', { type: 'hidden', name: 'others', value: 'true' }));
  await forgetPages();
  for (const item of mine) await drop(item.id);
  sendPlainly(form);
}

if (canKeep()) {
  document.addEventListener('submit', event => {
    const form = event.target;
    if (underWay.has(form)) return;
    // The phone goes into other hands: what the server is told to clear must not be the only copy of anything.
    const leaves = 'leaves' in form.dataset || form.getAttribute('action')?.endsWith('/sign-out');
    if (!leaves && !('keep' in form.dataset)) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    if (leaves) {
      askBeforeSignOut(form).catch(() => sendPlainly(form));
      return;
    }
    underWay.add(form);
    const submitter = event.submitter;
    if (submitter) submitter.disabled = true;
    // A disabled button has no value; its own was read before.
    const held = submitter?.name ? element('input', { type: 'hidden', name: submitter.name, value: submitter.value }) : null;
    if (held) form.append(held);
    keep(form, null).finally(() => {
      underWay.delete(form);
      held?.remove();
      if (submitter) submitter.disabled = false;
    });
  }, { capture: true });
  const said = sessionStorage.getItem('said');
  if (said) {
    sessionStorage.removeItem('said');
    showNote(said, true);
  }
}
