// Turning notices on: the browser is asked for its leave on the tap of a switch and at no other time. What it gives, its
// address at its push service and two keys, goes with the form.
(() => {
  const form = document.querySelector('form[data-notices]');
  if (!form) return;
  const word = form.querySelector('[data-notices-word]');
  const longestWait = 8000;

  const bytesOf = text => Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), sign => sign.charCodeAt(0));
  const textOf = bytes => btoa(String.fromCharCode(...new Uint8Array(bytes))).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
  const say = words => { word.textContent = words; };

  // The worker that shows notices is there from the first visit on; a browser that has none never becomes ready.
  const worker = () => Promise.race([
    navigator.serviceWorker.ready,
    new Promise((_, refuse) => setTimeout(() => refuse(new Error('no worker')), longestWait)),
  ]);

  const ask = async () => {
    if (!('Notification' in window) || !('serviceWorker' in navigator) || !('PushManager' in window)) {
      say('This browser shows no notices. On an iPhone, put this page on the home screen first and open it from there.');
      return false;
    }
    if (await Notification.requestPermission() !== 'granted') {
      say('Your browser was told to show no notices. You can change that in its settings for this page.');
      return false;
    }
    try {
      const { pushManager } = await worker();
      const key = bytesOf(form.dataset.notices);
      let taken = await pushManager.getSubscription();
      // One that was made for another key of the server takes nothing from this one.
      if (taken && textOf(taken.options.applicationServerKey ?? new ArrayBuffer(0)) !== form.dataset.notices) {
        await taken.unsubscribe();
        taken = null;
      }
      taken ??= await pushManager.subscribe({ userVisibleOnly: true, applicationServerKey: key });
      form.elements.Endpoint.value = taken.endpoint;
      form.elements.Key.value = textOf(taken.getKey('p256dh'));
      form.elements.Secret.value = textOf(taken.getKey('auth'));
      say('This device will show notices once you save.');
      return true;
    } catch {
      say('This browser could not be reached by its push service. Try again later, or on another device.');
      return false;
    }
  };

  form.addEventListener('change', async event => {
    const box = event.target;
    if (box.type !== 'checkbox' || !box.checked || form.elements.Endpoint.value) return;
    if (!await ask()) box.checked = false;
  });
})();
