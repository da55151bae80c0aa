// Ticks of the shopping list: saved at once, and kept on the phone while there is no network. Only the server's own answer
// counts as saved. What is kept is which goods are ticked, by their ids, and nothing else.
(() => {
  const form = document.getElementById('basket');
  const waiting = document.getElementById('waiting');
  if (!form || !waiting || !window.fetch) return;

  const name = `basket ${form.dataset.keep}`;
  const everySeconds = 20;
  const longestSeconds = 15;
  let busy = false;
  let refused = '';
  let pending = {};
  let stored = true;

  // Another tab of the list keeps its ticks under the same name: what is kept is read before each change of it.
  const read = () => {
    if (!stored) return pending;
    try {
      const kept = JSON.parse(localStorage.getItem(name) ?? '{}');
      return Object.fromEntries(Object.entries(kept).filter(([, on]) => typeof on === 'boolean'));
    } catch {
      return pending;
    }
  };

  const keep = () => {
    try {
      if (Object.keys(pending).length > 0) localStorage.setItem(name, JSON.stringify(pending));
      else localStorage.removeItem(name);
      stored = true;
    } catch {
      stored = false;
      // A phone that keeps nothing still sends while the page is open.
    }
  };

  const tell = () => {
    const count = Object.keys(pending).length;
    const offline = count > 0 && !busy;
    const words = refused || (count === 1 ? '1 tick waits for the network.' : `${count} ticks wait for the network.`);
    waiting.hidden = !offline;
    if (offline && waiting.textContent !== words) waiting.textContent = words;
  };

  const send = async () => {
    pending = read();
    const sent = Object.entries(pending);
    if (busy || sent.length === 0) return;
    busy = true;
    const body = new URLSearchParams();
    for (const [id, on] of sent) body.append(on ? 'on' : 'off', id);
    body.append('__RequestVerificationToken', form.elements.__RequestVerificationToken.value);
    refused = '';
    try {
      const answer = await fetch(form.dataset.ticks, { method: 'POST', body, redirect: 'manual', signal: AbortSignal.timeout(longestSeconds * 1000), headers: { Accept: 'application/json' } });
      if (answer.ok) {
        const stands = await answer.json();
        const settled = new Map([...stands.on.map(id => [id, true]), ...stands.off.map(id => [id, false])]);
        pending = read();
        for (const [id, on] of sent) {
          // Ticked anew while this was under way: that is another tick, and is sent next.
          if (settled.has(id) && pending[id] === on) delete pending[id];
        }
        keep();
      } else {
        // Signed out meanwhile, or the page is too old for the server.
        refused = 'The ticks could not be saved. They are kept here; open this page again.';
      }
    } catch {
      // No network, or one that does not answer: they wait.
    }
    busy = false;
    tell();
  };

  const boxes = [...form.querySelectorAll('[data-tick]')];
  // What is not to be bought any more needs no tick.
  pending = Object.fromEntries(Object.entries(read()).filter(([id]) => boxes.some(box => box.value === id)));
  keep();
  for (const box of boxes) {
    if (box.value in pending) box.checked = pending[box.value];
  }
  form.addEventListener('change', event => {
    const box = event.target;
    if (!box.matches?.('[data-tick]')) return;
    for (const same of boxes) if (same.value === box.value) same.checked = box.checked;
    pending = { ...read(), [box.value]: box.checked };
    keep();
    send();
  });
  window.addEventListener('online', send);
  setInterval(send, everySeconds * 1000);
  for (const button of form.querySelectorAll('[data-save]')) button.hidden = true;
  tell();
  send();
})();
