import { type Traces, tracesCsv } from '../../../sim/index.ts'
import { download } from '../../store/file.ts'

export const saveCsv = (traces: Traces, name: string) =>
  download(new Blob([tracesCsv(traces)], { type: 'text/csv' }), name)
