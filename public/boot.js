// Starts the app. The bundler writes two preload links into the page; this file reads the names of the compiled app
// from them, so that no script has to stand in the page itself and the content security policy can stay strict.
//
// The service worker is registered here and not by the app: a version that cannot start must still be able to fetch
// the next one. What pages and service worker say to each other is told at the top of sw.js.

const preloaded = (kind) => document.head.querySelector(`link[rel="${kind}"]`).href;

async function start() {
  const app = await import(preloaded('modulepreload'));
  await app.default({ module_or_path: preloaded('preload') });
  document.getElementById('starting')?.remove();
  document.documentElement.dataset.app = 'started';
}

function explain(error) {
  const lines = [
    'Longcook did not start. Plans already saved on this device are still here.',
    'Reload the page. If that does not help, the browser may be too old: it needs WebAssembly with SIMD ' +
      '(Chrome 91, Firefox 89, Safari 16.4 or newer).',
    `What the browser said: ${error?.message ?? error}`,
  ];
  const alert = document.createElement('div');
  alert.role = 'alert';
  alert.append(...lines.map((line) => Object.assign(document.createElement('p'), { textContent: line })));
  alert.append(Object.assign(document.createElement('button'), { textContent: 'Reload', onclick: renew }));
  document.getElementById('starting')?.remove();
  document.body.append(alert);
  document.documentElement.dataset.app = 'failed';
}

// Nothing is running that could lose anything: a newer version may take over at once.
async function renew() {
  const registration = await navigator.serviceWorker?.getRegistration();
  registration?.waiting?.postMessage('switch');
  setTimeout(() => location.reload(), registration?.waiting ? 500 : 0);
}

navigator.serviceWorker
  ?.register('sw.js', { updateViaCache: 'none' })
  .catch((error) => console.warn('Longcook will need the network at the next start:', error.message));

start().catch((error) => {
  console.error(error);
  explain(error);
});
