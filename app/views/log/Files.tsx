/** The logs that are open: dropped or chosen, how far they are read, why one is refused. */
import { useRef } from 'react'
import { logFaultText, percent } from '../../../sim/index.ts'
import { useLog } from '../../store/log.ts'
import type { OpenLog } from '../../store/log-state.ts'
import { Button } from '../../ui/Button.tsx'
import { sizeText } from './words.ts'

export function Choose() {
  const input = useRef<HTMLInputElement>(null)
  const open = useLog((state) => state.open)
  return (
    <div className="log-choose">
      <Button onClick={() => input.current?.click()}>Choose logs …</Button>
      <input
        ref={input}
        type="file"
        multiple
        hidden
        aria-label="Logs"
        onChange={(event) => {
          open(event.target.files ?? [])
          event.target.value = '' // the same file can be chosen again
        }}
      />
      <span>or drop them here: CSV or text of any recorder, also packed (.gz)</span>
    </div>
  )
}

export function LogFile({ log }: { log: OpenLog }) {
  const close = useLog((state) => state.close)
  const { id, name, size, status, done, told } = log
  const reading = status === 'reading'
  const faults = told?.faults ?? []
  return (
    <div className="log-file">
      <p>
        <b>{name}</b> <span className="unit">{sizeText(size)}</span>
      </p>
      {reading && (
        <p role="status">
          <progress max={1} value={done} aria-label={`Reading ${name}`} /> {percent(done)} read
        </p>
      )}
      <Button quiet onClick={() => close(id)} aria-label={`${reading ? 'Cancel' : 'Close'} ${name}`}>
        {reading ? 'Cancel' : 'Close'}
      </Button>
      {status === 'unreadable' && (
        <p role="alert" className="log-fault">
          {name} could not be read to its end: it was moved or changed meanwhile, or it is packed and damaged. Choose it
          again.
        </p>
      )}
      {faults.length > 0 && (
        <div role="alert" className="log-fault">
          {faults.map((fault) => (
            <p key={JSON.stringify(fault)}>{logFaultText(fault, 'page')}</p>
          ))}
        </div>
      )}
    </div>
  )
}
