import { useEffect } from 'react'
import { useView } from '../store/view.ts'

/** Puts the chosen theme on the page; "system" leaves it to the browser. */
export function useTheme() {
  const theme = useView((state) => state.theme)
  useEffect(() => {
    if (theme === 'system') delete document.documentElement.dataset.theme
    else document.documentElement.dataset.theme = theme
  }, [theme])
}
