/** A figure beside the limit that it misses, so that nobody reads the same figure twice: "just under 2.82 N·m". */
export function beside(said: (value: number) => string, value: number, limit: number): string {
  if (said(value) !== said(limit)) return said(value)
  return `${value < limit ? 'just under' : 'just over'} ${said(value)}`
}
