// Starts the worker that does the reckoning, from the page's own compiled app.
//
//   worker -> page   'boot'          ready to be told what to run
//   page -> worker   [href, module]  href of link[rel=modulepreload]; the page's WebAssembly.Module, already compiled
//
// Then the app's `main` runs here and finds itself in a worker; every later message is the app's own.
// It is a file and not a blob: a blob's imports do not go through the service worker in every browser.

self.onmessage = async ({ data: [href, module] }) => {
  self.onmessage = null;
  const app = await import(href);
  await app.default({ module_or_path: module });
};
self.postMessage('boot');
