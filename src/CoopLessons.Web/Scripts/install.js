// The button that puts the page on the home screen, where the browser offers it.
let offer = null;
const button = () => document.querySelector('[data-install]');

window.addEventListener('beforeinstallprompt', event => {
  event.preventDefault();
  offer = event;
  if (button()) button().hidden = false;
});

document.addEventListener('click', event => {
  if (!offer || !event.target.closest?.('[data-install]')) return;
  offer.prompt();
  offer = null;
  button().hidden = true;
});
