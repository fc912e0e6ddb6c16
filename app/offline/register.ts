/** Rest after the page has been drawn [ms]: the copy for offline use reads every file of the build, and the first runs go before it. */
const REST = 3000

/** Lets the built page be installed and opened without a network. Does nothing in development or where that is not possible. */
export function registerOffline(): void {
  if (import.meta.env.PROD) setTimeout(register, REST)
}

/** Refused in private windows, without storage and on plain http from another host, by a throw or later; the page works all the same. */
async function register() {
  try {
    await navigator.serviceWorker?.register('./sw.js')
  } catch {
    // Without a copy for offline use.
  }
}
