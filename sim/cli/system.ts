/** What the system says no to, in words. */

/** The system's own words for an error, e.g. "no space left on device", without code and call. */
export function reasonOf(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error)
  return /^E[A-Z0-9]+: ([^,]+)/.exec(message)?.[1] ?? message
}
