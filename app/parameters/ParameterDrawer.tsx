import { useState } from 'react'
import { Button } from '../ui/Button.tsx'
import { Drawer } from '../ui/Dialog.tsx'
import { Parameters } from './Parameters.tsx'

/** The parameters of a narrow page: out of the way until they are wanted. */
export function ParameterDrawer() {
  const [open, setOpen] = useState(false)
  return (
    <div className="parameter-drawer">
      <Button onClick={() => setOpen(true)}>Parameters</Button>
      <Drawer open={open} title="Parameters" onClose={() => setOpen(false)}>
        <Parameters />
      </Drawer>
    </div>
  )
}
