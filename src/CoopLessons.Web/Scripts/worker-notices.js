// In the worker: shows a notice, and opens its page when it is tapped. What it says came sealed from the server itself.
self.addEventListener('push', event => {
  let told = {};
  try {
    told = event.data?.json() ?? {};
  } catch {
    // A notice that cannot be read is shown without words of its own: the browser wants one shown for each.
  }
  event.waitUntil(self.registration.showNotification(told.title || 'CoopLessons', {
    body: told.body || 'Something wants to be looked at.',
    tag: told.tag,
    icon: '/favicon.svg',
    data: { to: typeof told.to === 'string' && /^\/[a-z]/.test(told.to) ? told.to : '/today' },
  }));
});

self.addEventListener('notificationclick', event => {
  event.notification.close();
  const to = new URL(event.notification.data?.to ?? '/today', self.location.origin).href;
  event.waitUntil((async () => {
    const open = await self.clients.matchAll({ type: 'window', includeUncontrolled: true });
    const there = open.find(page => page.url === to);
    if (there) return there.focus();
    return self.clients.openWindow(to);
  })());
});
