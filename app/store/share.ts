/**
 * `next` with every part that equals its counterpart in `old` taken from `old`: what has not changed is still the same
 * object, so that nothing that depends on it is worked out or drawn again. Both are JSON values.
 */
export function share<T>(old: unknown, next: T): T {
  if (Object.is(old, next)) return next
  if (typeof old !== 'object' || old === null || typeof next !== 'object' || next === null) return next
  if (Array.isArray(old) !== Array.isArray(next)) return next
  const before = old as Record<string, unknown>
  const shared = (Array.isArray(next) ? [] : {}) as Record<string, unknown>
  for (const [key, value] of Object.entries(next)) shared[key] = share(before[key], value)
  const keys = Object.keys(shared)
  const same = keys.length === Object.keys(before).length && keys.every((key) => Object.is(shared[key], before[key]))
  return (same ? before : shared) as T
}
