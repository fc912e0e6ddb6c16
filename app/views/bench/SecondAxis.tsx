/** The axis beside that of the bench: what chooses it, and the line that says which it is. */
import { lazy, Suspense, useState } from 'react'
import { useResults } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import { Menu } from '../../ui/Menu.tsx'

const BesideLine = lazy(async () => ({ default: (await import('../../read/axes/BesideLine.tsx')).BesideLine }))

type Generic = typeof import('../../read/axes/generic.ts')

/** Another axis to be run beside that of the bench; what there is comes when the list may be opened. */
export function SecondAxis() {
  const none = useScenario((state) => state.beside === null)
  const job = useScenario((state) => state.scenario.job)
  const [generic, setGeneric] = useState<Generic | null>(null)
  const soon = () => {
    if (!generic) import('../../read/axes/generic.ts').then(setGeneric, notFetched)
  }
  const items = (generic?.axesFor(job) ?? []).map(({ title, actuator }) => ({
    label: title,
    act: () => useScenario.getState().setBeside({ title, actuator }),
  }))
  return <Menu align="end" label={none ? 'Second axis' : 'Other second axis'} items={items} soon={soon} />
}

const notFetched = () => useResults.getState().say('The list of axes could not be fetched.')

export function BesideShown() {
  const beside = useScenario((state) => state.beside !== null)
  if (!beside) return null
  return (
    <Suspense fallback={null}>
      <BesideLine />
    </Suspense>
  )
}
