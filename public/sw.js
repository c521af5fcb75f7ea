// Keeps the whole app on the device, so that it starts with no network.
//
//   page -> worker   'switch'    take over now; every open page then sees `controllerchange` and should reload
//   page -> worker   'version'   answered with { version }, to the page that asked
//
// A version is the hash of the contents of all its files. A new one is fetched in the background, file by file, each
// checked against its hash, and then waits (`registration.waiting`) until a person says 'switch' or no page is open.
// Files of two versions are never mixed. The bundling step fills in the two values below.

const VERSION = '__VERSION__';
const FILES = '__FILES__'; // { path: base64 of the SHA-256 of its content }, the page itself as './'
const CACHE = `longcook-${VERSION}`;
const TRIES = 4;

self.addEventListener('install', (event) => event.waitUntil(keepAll()));
self.addEventListener('activate', (event) => event.waitUntil(takeOver()));
self.addEventListener('fetch', (event) => {
  const { method, url } = event.request;
  if (method === 'GET' && url.startsWith(self.registration.scope)) event.respondWith(answer(event.request));
});
self.addEventListener('message', (event) => {
  if (event.data === 'switch') event.waitUntil(self.skipWaiting());
  if (event.data === 'version') event.source.postMessage({ version: VERSION });
});

// One after another: some browsers drop requests when an install step asks for everything at once. What an earlier,
// interrupted try has kept was checked then and is not fetched again.
async function keepAll() {
  const cache = await caches.open(CACHE);
  for (const [path, digest] of Object.entries(FILES)) {
    if (!(await cache.match(path))) await keep(cache, path, digest);
  }
}

async function keep(cache, path, digest) {
  for (let attempt = 1; ; attempt += 1) {
    try {
      const response = await fetch(path, { cache: 'no-cache' });
      if (!response.ok || response.redirected) throw new Error(`${path}: the server answered ${response.status}`);
      const found = await sha256(await response.clone().arrayBuffer());
      if (found !== digest) throw new Error(`${path}: not the file that belongs to version ${VERSION}`);
      return await cache.put(path, response);
    } catch (error) {
      if (attempt === TRIES) throw error;
      await new Promise((resume) => setTimeout(resume, 400 * attempt));
    }
  }
}

async function sha256(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return btoa(String.fromCharCode(...digest));
}

async function takeOver() {
  const old = (await caches.keys()).filter((name) => name.startsWith('longcook-') && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
  await self.clients.claim();
}

// Looks without opening: a last request answered by a version that has just been replaced would otherwise make its
// cache anew, empty, after the next version has given it back.
async function answer(request) {
  const wanted = request.mode === 'navigate' ? './' : request;
  const kept = await caches.match(wanted, { cacheName: CACHE, ignoreSearch: true, ignoreVary: true });
  return kept ?? fetch(request);
}
