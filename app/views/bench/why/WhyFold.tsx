import { lazy, Suspense, useState } from 'react'
import type { StrategyId } from '../../../../sim/index.ts'
import './why.css'

const Explained = lazy(async () => ({ default: (await import('./Explained.tsx')).Explained }))

/** Why it came so, and what would save the part; loaded and worked out while it is open and the bench is at rest. */
export function WhyFold({ strategy }: { strategy: StrategyId }) {
  const [open, setOpen] = useState(false)
  return (
    <details className="why" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Why, and what would change it</summary>
      {open && (
        <Suspense fallback={null}>
          <Explained strategy={strategy} />
        </Suspense>
      )}
    </details>
  )
}
