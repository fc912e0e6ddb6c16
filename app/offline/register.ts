/** Rest after the page has been drawn [ms]: the copy for offline use reads every file of the build, and the first runs go before it. */
const REST = 3000

/** Lets the built page be installed and opened without a network. Does nothing in development or where that is not possible. */
export function registerOffline(): void {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return
  // Refused in private windows and on plain http from another host; the page works all the same.
  setTimeout(() => navigator.serviceWorker.register('./sw.js').catch(() => {}), REST)
}
