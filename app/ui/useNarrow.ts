import { useSyncExternalStore } from 'react'

const query = matchMedia('(max-width: 760px)')

/** Whether the page is too narrow for more than one column. */
export const useNarrow = () => useSyncExternalStore(subscribe, () => query.matches)

function subscribe(changed: () => void) {
  query.addEventListener('change', changed)
  return () => query.removeEventListener('change', changed)
}
