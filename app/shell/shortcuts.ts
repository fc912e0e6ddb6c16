import { useEffect } from 'react'
import { useScenario } from '../store/scenario.ts'

/** Ctrl or ⌘ with Z undoes, with Shift+Z or Y redoes; where free text is typed the browser's own undo is left alone. */
export function useShortcuts() {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const key = event.key.toLowerCase()
      if (!(event.ctrlKey || event.metaKey) || event.altKey || (key !== 'z' && key !== 'y')) return
      if (event.target instanceof Element && event.target.closest('textarea, input:not([role="spinbutton"])')) return
      event.preventDefault()
      const { undo, redo } = useScenario.getState()
      if (key === 'y' || event.shiftKey) redo()
      else undo()
    }
    window.addEventListener('keydown', onKey)
    return () => window.removeEventListener('keydown', onKey)
  }, [])
}
