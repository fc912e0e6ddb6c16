import { faultLine } from '../../sim/index.ts'
import { useView } from '../store/view.ts'
import { Button } from '../ui/Button.tsx'
import { Dialog } from '../ui/Dialog.tsx'
import { useRefused } from './openFile.ts'

/** Faults beyond this many are counted, not listed. */
const MOST = 30
/** Names that a recorder's log may have. */
const LOG = /\.(csv|tsv|txt|dat|log|gz)$/i

/** What is wrong with a file that was to be opened. */
export function RefusedFile() {
  const refused = useRefused((state) => state.refused)
  const faults = refused?.faults ?? []
  const close = () => useRefused.setState({ refused: null })
  const toLog = () => {
    close()
    useView.setState({ view: 'log' })
  }
  return (
    <Dialog open={refused !== null} title="This file was not opened" onClose={close}>
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
        {refused && LOG.test(refused.name) && (
          <p>
            What a drive has recorded is read in the view Log: choose or drop it there.{' '}
            <Button onClick={toLog}>Go to Log</Button>
          </p>
        )}
      </div>
    </Dialog>
  )
}
