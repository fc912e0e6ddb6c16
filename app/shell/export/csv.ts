import { channelsOf, jobOf, type Scenario, type Traces, tracesCsv } from '../../../sim/index.ts'
import { download } from '../../store/file.ts'

export const saveCsv = (scenario: Scenario, traces: Traces, name: string) =>
  download(new Blob([tracesCsv(traces, channelsOf(jobOf(scenario)))], { type: 'text/csv' }), name)
