/**
 * `next` with every part that equals its counterpart in `old` taken from `old`: what has not changed is still the same
 * object, so that nothing that depends on it is worked out or drawn again. Both are JSON values.
 */
export function share<T>(old: unknown, next: T): T {
  if (Object.is(old, next)) return next
  if (typeof old !== 'object' || old === null || typeof next !== 'object' || next === null) return next
  if (Array.isArray(old) !== Array.isArray(next)) return next
  // Own keys alone: one may be called as a part of every object is.
  const before = old as Record<string, unknown>
  const at = (key: string) => (Object.hasOwn(before, key) ? before[key] : undefined)
  const entries = Object.entries(next).map(([key, value]): [string, unknown] => [key, share(at(key), value)])
  const same =
    entries.length === Object.keys(before).length &&
    entries.every(([key, value]) => Object.hasOwn(before, key) && Object.is(value, before[key]))
  if (same) return before as T
  return (Array.isArray(next) ? entries.map(([, value]) => value) : Object.fromEntries(entries)) as T
}
