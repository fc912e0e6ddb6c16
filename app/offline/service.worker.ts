// The service worker. The build puts FILES and VERSION in front of it and writes the result to dist/sw.js.
declare const FILES: string[]
declare const VERSION: string
declare const self: ServiceWorkerGlobalScope

const cacheName = `jawbench-${VERSION}`

self.addEventListener('install', (event) => {
  event.waitUntil(fill().then(() => self.skipWaiting()))
})

self.addEventListener('activate', (event) => {
  event.waitUntil(clean().then(() => self.clients.claim()))
})

self.addEventListener('fetch', (event) => {
  const { method, url } = event.request
  if (method === 'GET' && new URL(url).origin === self.location.origin) event.respondWith(answer(event.request))
})

/** Past the browser's own cache, because a half-old set of files would not fit together. */
async function fill() {
  const cache = await caches.open(cacheName)
  await cache.addAll(FILES.map((file) => new Request(file, { cache: 'reload' })))
}

/** A page of the build before may still be open and ask for its files, so the newest two sets are kept. */
async function clean() {
  const ours = (await caches.keys()).filter((name) => name.startsWith('jawbench-'))
  await Promise.all(ours.slice(0, -2).map((name) => caches.delete(name)))
}

/** Files under assets/ carry a hash in their name and never change; all others are asked for first and cached copies stand in. */
async function answer(request: Request): Promise<Response> {
  const cached = await find(request)
  if (cached && new URL(request.url).pathname.includes('/assets/')) return cached
  return fetch(request).catch((error) => {
    if (cached) return cached
    throw error
  })
}

// Servers mark files as varying with the request's origin; module scripts send one, the filling of the cache did not.
const loosely = { ignoreSearch: true, ignoreVary: true }

async function find(request: Request): Promise<Response | undefined> {
  const target = request.mode === 'navigate' ? 'index.html' : request
  const cache = await caches.open(cacheName)
  return (await cache.match(target, loosely)) ?? caches.match(target, loosely)
}
