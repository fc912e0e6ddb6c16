/** What hands do to a group of charts, as buttons: closer, farther, the whole; a second cursor; and the read-out to take away. */
import { lazy, type ReactNode, Suspense } from 'react'
import { Button } from './Button.tsx'
import { type ChartGroup, groupOf, showWhole } from './chart/group.ts'

const Readout = lazy(() => import('./chart/Readout.tsx'))
const hands = () => import('./chart/hands.ts')

interface Props {
  syncKey: string
  /** What the charts show. */
  name: string
  children?: ReactNode
}

export function ChartTools({ syncKey, name, children }: Props) {
  const group = groupOf(syncKey)
  const { mark, told } = group.use()
  const zoom = async (factor: number) => {
    const { zoomAtCursor } = await hands()
    if (group.surfaces[0]) zoomAtCursor(group.surfaces[0], factor)
  }
  return (
    <fieldset className="chart-tools">
      <legend className="sr-only">Tools of the charts: {name}</legend>
      {children}
      <Button quiet title="Drag, or the key +" onClick={() => zoom(0.5)}>
        Closer
      </Button>
      <Button quiet title="The key −" onClick={() => zoom(2)}>
        Farther
      </Button>
      <Button quiet title="Double press, or the key 0" onClick={() => showWhole(group)}>
        Whole
      </Button>
      <Button
        quiet
        pressed={mark !== null}
        title="Shift and press, or the key M"
        onClick={() => hands().then(({ toggleMark }) => toggleMark(group))}
      >
        Second cursor
      </Button>
      <Button quiet title="The key C" onClick={() => copy(group)}>
        Copy read-out
      </Button>
      <span className="sr-only" role="status">
        {told}
      </span>
    </fieldset>
  )
}

const copy = async (group: ChartGroup) => (await import('./chart/reading.ts')).copyReading(group)

/** Every line at both cursors, while there are two; stands after the charts, so that they stay where they are. */
export function ChartReadout({ syncKey, name }: Pick<Props, 'syncKey' | 'name'>) {
  const group = groupOf(syncKey)
  const two = group.use(({ mark }) => mark !== null)
  return (
    two && (
      <Suspense>
        <Readout group={group} name={name} />
      </Suspense>
    )
  )
}
