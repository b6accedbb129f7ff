/// <reference lib="webworker" />
export {};

/*
 * Keeps the built files in the browser, so that the tool starts and measures without a network. One cache a version. A new
 * version fills its own cache and then waits: it takes over once no window of the old one is left, or when a window asks.
 * The build puts the constants before this text.
 */

/** Addresses relative to this file, each with its SHA-256; '' is the page. */
declare const FILES: Readonly<Record<string, string>>;
declare const VERSION: string;
/** Threads take their policy from the headers of their file, which not every server sends. */
declare const POLICY: string;

const worker = self as unknown as ServiceWorkerGlobalScope;
const SCOPE = new URL('./', worker.location.href);
/** Another copy of the tool on the same host has caches of its own. */
const PREFIX = `exitframe ${SCOPE.pathname} `;
const CACHE = PREFIX + VERSION;

async function olderCaches(): Promise<string[]> {
  const names = await caches.keys();
  return names.filter((name) => name.startsWith(PREFIX) && name !== CACHE);
}

async function isWhole(body: ArrayBuffer, sha256: string): Promise<boolean> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', body));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('') === sha256;
}

/** The file as this version has it. Throws where the server holds another: versions must not be mixed. */
async function fileOf(url: string, sha256: string): Promise<Response> {
  for (const name of await olderCaches()) {
    const held = await (await caches.open(name)).match(url);
    if (held !== undefined && (await isWhole(await held.clone().arrayBuffer(), sha256)))
      return held;
  }
  const response = await fetch(url, { cache: 'no-cache' });
  const body = await response.arrayBuffer();
  if (!response.ok || !(await isWhole(body, sha256))) throw new Error(`${url} is not as built.`);
  const headers = new Headers(response.headers);
  // They describe what came over the wire, not what is kept.
  headers.delete('Content-Encoding');
  headers.delete('Content-Length');
  if (!headers.has('Content-Security-Policy')) headers.set('Content-Security-Policy', POLICY);
  return new Response(body, { headers });
}

/** One after the other, beside the page's own work; what an install cut short has kept is kept. */
async function install(): Promise<void> {
  const cache = await caches.open(CACHE);
  for (const [path, sha256] of Object.entries(FILES)) {
    const url = new URL(path, SCOPE).href;
    if ((await cache.match(url)) === undefined) await cache.put(url, await fileOf(url, sha256));
  }
}

/** Drops older versions' files, unless another window may still ask for them or a newer version is coming in. */
async function tidy(): Promise<void> {
  const { installing, waiting } = worker.registration;
  const windows = await worker.clients.matchAll({ type: 'window', includeUncontrolled: true });
  if (installing !== null || waiting !== null || windows.length > 1) return;
  for (const name of await olderCaches()) await caches.delete(name);
}

async function answer(request: Request, url: string): Promise<Response> {
  for (const name of [CACHE, ...(await olderCaches())]) {
    const held = await (await caches.open(name)).match(url);
    if (held !== undefined) return held;
  }
  return fetch(request);
}

worker.addEventListener('install', (event) => event.waitUntil(install()));

worker.addEventListener('activate', (event) =>
  event.waitUntil(tidy().then(() => worker.clients.claim())),
);

worker.addEventListener('message', ({ data }) => {
  if (data === 'take over') void worker.skipWaiting();
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== SCOPE.origin) return;
  if (!pathname.startsWith(SCOPE.pathname)) return;
  const path = pathname.slice(SCOPE.pathname.length);
  const isPage = path === '' || path === 'index.html';
  event.respondWith(answer(request, isPage ? SCOPE.href : origin + pathname));
  if (request.mode === 'navigate') event.waitUntil(tidy());
});
