import { useMemo, useState } from 'react'

/** Part of a drawing that is shown, known at once to hands that ask before it has been drawn; null: as at first. */
export function useZoom<V>() {
  const [, redraw] = useState(0)
  return useMemo(() => {
    let shown: V | null = null
    return {
      get: () => shown,
      set(view: V | null) {
        shown = view
        redraw((count) => count + 1)
      },
    }
  }, [])
}
