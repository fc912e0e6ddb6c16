/** A button that opens a short list of commands: arrow keys move, Escape closes, focus comes back to the button. */
import { type KeyboardEvent, type ReactNode, useEffect, useId, useLayoutEffect, useRef, useState } from 'react'
import { Button } from './Button.tsx'

export interface MenuItem {
  label: string
  /** One line beneath the label. */
  detail?: string
  disabled?: boolean
  act(): void
}

interface MenuProps {
  label: ReactNode
  items: MenuItem[]
  /** Called when it may soon be opened, and when it is; the items may come after that. */
  soon?(): void
  /** Which edge of the button the list keeps to. */
  align?: 'start' | 'end'
}

export function Menu({ label, items, soon, align = 'start' }: MenuProps) {
  const [open, setOpen] = useState(false)
  const root = useRef<HTMLDivElement>(null)
  const id = useId()

  const filled = items.length > 0
  useLayoutEffect(() => {
    if (open && filled) keepInWindow(root.current?.querySelector<HTMLElement>('[role="menu"]'))
  }, [open, filled])
  useEffect(() => {
    if (open && filled) entries(root.current)[0]?.focus()
  }, [open, filled])
  useEffect(() => {
    if (!open) return
    const outside = (event: PointerEvent) => {
      if (!root.current?.contains(event.target as Node)) setOpen(false)
    }
    addEventListener('pointerdown', outside)
    return () => removeEventListener('pointerdown', outside)
  }, [open])

  const close = () => {
    setOpen(false)
    root.current?.querySelector('button')?.focus()
  }
  const press = (event: KeyboardEvent) => {
    const list = entries(root.current)
    const at = list.indexOf(document.activeElement as HTMLElement)
    const next = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: list.length - 1 }[event.key]
    if (next !== undefined) {
      event.preventDefault()
      list[(next + list.length) % list.length]?.focus()
    } else if (event.key === 'Escape') {
      event.stopPropagation()
      close()
    } else if (event.key === 'Tab') setOpen(false)
  }
  return (
    <div className="menu" ref={root}>
      <Button
        aria-haspopup="menu"
        aria-expanded={open}
        aria-controls={id}
        onPointerEnter={soon}
        onFocus={soon}
        onClick={() => {
          soon?.()
          setOpen(!open)
        }}
      >
        {label}
        <span className="menu-mark" aria-hidden="true" />
      </Button>
      <div id={id} role="menu" className={`menu-list menu-${align}`} hidden={!open || !filled} onKeyDown={press}>
        {items.map((item) => (
          <button
            key={item.label}
            type="button"
            role="menuitem"
            tabIndex={-1}
            className="menu-item"
            aria-disabled={item.disabled}
            onClick={() => {
              if (item.disabled) return
              close()
              item.act()
            }}
          >
            {item.label}
            {item.detail && <small>{item.detail}</small>}
          </button>
        ))}
      </div>
    </div>
  )
}

const entries = (root: HTMLElement | null) => [...(root?.querySelectorAll<HTMLElement>('[role="menuitem"]') ?? [])]

/** Room between a list and the edge of the window [px]. */
const EDGE = 8

/** Moves a list sideways by what would lie outside the window. */
function keepInWindow(list: HTMLElement | null | undefined) {
  if (!list) return
  list.style.translate = ''
  const { left, right } = list.getBoundingClientRect()
  const out = Math.max(0, right - document.documentElement.clientWidth + EDGE)
  list.style.translate = `${left - out < EDGE ? EDGE - left : -out}px`
}
