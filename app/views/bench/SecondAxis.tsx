/** The axis beside that of the bench: what chooses it, and the line that says which it is. */
import { lazy, Suspense } from 'react'
import { useScenario } from '../../store/scenario.ts'
import { Button } from '../../ui/Button.tsx'

/** The generic axes are not needed for the first verdicts. */
const BesideChooser = lazy(async () => ({ default: (await import('./BesideChooser.tsx')).BesideChooser }))
const BesideLine = lazy(async () => ({ default: (await import('../../read/axes/BesideLine.tsx')).BesideLine }))

export const SecondAxis = () => (
  <Suspense fallback={<Button disabled>Second axis</Button>}>
    <BesideChooser />
  </Suspense>
)

export function BesideShown() {
  const beside = useScenario((state) => state.beside !== null)
  if (!beside) return null
  return (
    <Suspense fallback={null}>
      <BesideLine />
    </Suspense>
  )
}
