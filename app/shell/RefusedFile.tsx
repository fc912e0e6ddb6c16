import { faultLine } from '../../sim/index.ts'
import { Dialog } from '../ui/Dialog.tsx'
import { useRefused } from './openFile.ts'

/** Faults beyond this many are counted, not listed. */
const MOST = 30

/** What is wrong with a file that was to be opened. */
export function RefusedFile() {
  const refused = useRefused((state) => state.refused)
  const faults = refused?.faults ?? []
  return (
    <Dialog
      open={refused !== null}
      title="This file was not opened"
      onClose={() => useRefused.setState({ refused: null })}
    >
      <div className="prose">
        <p>
          {refused?.name} is no sound scenario,{' '}
          {faults.length === 1 ? 'for one reason' : `for ${faults.length} reasons`}. The bench is as it was.
        </p>
        <ul className="faults">
          {faults.slice(0, MOST).map((fault) => (
            <li key={fault.path}>{faultLine(fault)}</li>
          ))}
        </ul>
        {faults.length > MOST && <p>And {faults.length - MOST} more.</p>}
      </div>
    </Dialog>
  )
}
