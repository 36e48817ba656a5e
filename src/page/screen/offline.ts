/** Keeps the page on the device for the time without a network, where it was loaded from a server. */
export function keepOffline(say: (words: string) => void): void {
  const isServed =
    location.protocol === 'https:' || location.hostname === '127.0.0.1' || location.hostname === 'localhost';
  const isOneFile = document.querySelector('link[rel="stylesheet"]') === null;
  if (!isServed || isOneFile || !('serviceWorker' in navigator)) return;
  navigator.serviceWorker
    .register('sw.js')
    .then((registration) => {
      registration.addEventListener('updatefound', () => {
        if (navigator.serviceWorker.controller !== null)
          say('A newer version is here. Close every tab of this page, and the next visit has it.');
      });
    })
    .catch(() => {
      // Some servers and private windows allow none; the page works without.
    });
}
