import { useEffect, useRef } from 'react'
import { type Command, commandFor, type Slide } from './slides.ts'

/** Keys of the customer view, wherever the focus is, unless what has the focus wants them for itself. */
export function useCommands(
  where: { slide: number; still: boolean; slides: Slide[] },
  obey: (command: Command) => void,
) {
  const latest = useRef({ where, obey })
  latest.current = { where, obey }
  useEffect(() => {
    const listen = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || taken(event)) return
      const command = commandFor(event.key, event.shiftKey, latest.current.where)
      if (!command) return
      event.preventDefault()
      latest.current.obey(command)
    }
    window.addEventListener('keydown', listen)
    return () => window.removeEventListener('keydown', listen)
  }, [])
}

/** A dialog keeps all keys, a button the one that presses it. */
function taken({ target, key }: KeyboardEvent): boolean {
  if (!(target instanceof Element)) return false
  return target.closest('dialog') !== null || (key === ' ' && target.closest('button, input') !== null)
}
