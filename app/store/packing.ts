/** What packs scenarios into links and unpacks them comes when the first link is read or written: the page that opens does without. */
type Packing = typeof import('./link.ts')

let here: Packing | null = null
let coming: Promise<Packing> | undefined

/** Null: it is not here yet. */
export const packing = (): Packing | null => here

/** Rejects where it cannot be fetched; another call then tries again. */
export function fetchPacking(): Promise<Packing> {
  coming ??= import('./link.ts').then(
    (fetched) => {
      here = fetched
      return fetched
    },
    (error: unknown) => {
      coming = undefined
      throw error
    },
  )
  return coming
}
