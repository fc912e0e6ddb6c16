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

/** Stands in a cache as soon as all files do. */
const WHOLE = 'jawbench-whole'

/** Past the browser's own cache, because a half-old set of files would not fit together. What cannot be had whole is not kept. */
async function fill() {
  const cache = await caches.open(cacheName)
  try {
    await cache.addAll(FILES.map((file) => new Request(file, { cache: 'reload' })))
    await cache.put(WHOLE, new Response())
  } catch (error) {
    if (!(await cache.match(WHOLE))) await caches.delete(cacheName)
    throw error
  }
}

/** A page of the build before may still be open and ask for its files, so the newest two whole sets are kept. */
async function clean() {
  const ours = (await caches.keys()).filter((name) => name.startsWith('jawbench-'))
  const whole = (await wholeOnes()).slice(-2)
  await Promise.all(ours.filter((name) => !whole.includes(name)).map((name) => caches.delete(name)))
}

/** Names of the caches that hold all files of their build, the newest last. */
async function wholeOnes(): Promise<string[]> {
  const found = []
  for (const name of await caches.keys())
    if (name.startsWith('jawbench-') && (await (await caches.open(name)).match(WHOLE))) found.push(name)
  return found
}

/** Files under assets/ carry a hash in their name and never change; all others are asked for first and cached copies stand in. */
async function answer(request: Request): Promise<Response> {
  const cached = await find(request).catch(() => undefined) // storage may be denied meanwhile
  if (cached && new URL(request.url).pathname.includes('/assets/')) return cached
  return fetch(request).catch((error) => {
    if (cached) return cached
    throw error
  })
}

// Servers mark files as varying with the request's origin; module scripts send one, the filling of the cache did not.
const loosely = { ignoreSearch: true, ignoreVary: true }

/** In the set of this build first. */
async function find(request: Request): Promise<Response | undefined> {
  const own = await findIn(cacheName, request)
  if (own) return own
  for (const name of (await wholeOnes()).reverse()) {
    const found = await findIn(name, request)
    if (found) return found
  }
  return undefined
}

async function findIn(name: string, request: Request): Promise<Response | undefined> {
  const cache = await caches.open(name)
  return (await cache.match(request, loosely)) ?? (isPage(request) ? cache.match('index.html') : undefined)
}

/** The page may be asked for by its folder. */
const isPage = ({ mode, url }: Request) => mode === 'navigate' && url.replace(/[?#].*/, '').endsWith('/')
