import { useEffect } from 'react'
import { useScenario } from '../store/scenario.ts'

/** Ctrl or ⌘ with Z undoes, with Shift+Z or Y redoes; inside a text that is being typed the browser's own undo is left alone. */
export function useShortcuts() {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return
      const key = event.key.toLowerCase()
      if (key !== 'z' && key !== 'y') return
      if (event.target instanceof HTMLElement && event.target.closest('[data-typing], textarea')) return
      event.preventDefault()
      const { undo, redo } = useScenario.getState()
      if (key === 'y' || event.shiftKey) redo()
      else undo()
    }
    window.addEventListener('keydown', onKey)
    return () => window.removeEventListener('keydown', onKey)
  }, [])
}
