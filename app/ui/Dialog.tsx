/** The browser's own modal dialog: focus stays inside and comes back, Escape and a click beside it close it. */
import { type ReactNode, useEffect, useId, useRef } from 'react'
import { Button } from './Button.tsx'

interface DialogProps {
  open: boolean
  title: string
  onClose(): void
  children: ReactNode
  /** At the window's side instead of in its middle. */
  side?: 'left' | 'right'
}

export function Dialog({ open, title, onClose, children, side }: DialogProps) {
  const dialog = useRef<HTMLDialogElement>(null)
  const id = useId()
  useEffect(() => {
    const element = dialog.current
    if (open && !element?.open) element?.showModal()
    if (!open && element?.open) element.close()
  }, [open])
  return (
    <dialog
      ref={dialog}
      className={side ? `dialog drawer drawer-${side}` : 'dialog'}
      aria-labelledby={id}
      onClose={onClose}
      onPointerDown={(event) => {
        if (event.target === event.currentTarget) event.currentTarget.close()
      }}
    >
      <div className="dialog-body">
        <header className="dialog-head">
          <h2 id={id}>{title}</h2>
          <Button quiet onClick={() => dialog.current?.close()}>
            Close
          </Button>
        </header>
        {open && children}
      </div>
    </dialog>
  )
}

/** A dialog at the window's side, for narrow windows. */
export function Drawer({ side = 'left', ...rest }: DialogProps) {
  return <Dialog side={side} {...rest} />
}
