/** Standard normal numbers (Box and Muller 1958) from a generator of its own (Park and Miller 1988), the same for a seed everywhere. */
export function normals(seed: number): () => number {
  let state = (seed * 7919 + 12345) % 2147483647
  const uniform = () => {
    state = (state * 48271) % 2147483647
    return state / 2147483647
  }
  for (let n = 0; n < 10; n++) uniform()
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform())
}
