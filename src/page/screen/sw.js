/**
 * Keeps the page for the time without a network. The build writes the name of this version and its files. A new version waits until
 * no page of the old one is open, so that nobody's text is lost to a reload.
 */
const name = 'NAME';
const files = ['FILES'];

addEventListener('install', (event) =>
  event.waitUntil(caches.open(name).then((cache) => cache.addAll(files))),
);
addEventListener('activate', (event) =>
  event.waitUntil(
    caches
      .keys()
      .then((names) => names.filter((other) => other.startsWith('quillpath-') && other !== name))
      .then((old) => Promise.all(old.map((other) => caches.delete(other))))
      .then(() => clients.claim()),
  ),
);
addEventListener('fetch', (event) => {
  if (event.request.method !== 'GET' || new URL(event.request.url).origin !== location.origin) return;
  event.respondWith(
    caches
      .open(name)
      .then((cache) => cache.match(event.request, { ignoreSearch: true }))
      .then((kept) => kept ?? fetch(event.request)),
  );
});
