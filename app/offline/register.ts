/** Lets the built page be installed and opened without a network. Does nothing in development or where that is not possible. */
export function registerOffline(): void {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return
  // Refused in private windows and on plain http from another host; the page works all the same.
  navigator.serviceWorker.register('./sw.js').catch(() => {})
}
