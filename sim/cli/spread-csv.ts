/** Every part of a study by every strategy, a row each. */
import Papa from 'papaparse'
import { type Batch, failedAt, figureAt, type SpreadStudy } from '../ask/spread/batch.ts'
import { drawing, variedPaths } from '../ask/spread/draw.ts'
import { demandsOf, fatesOf } from '../ask/spread/outcome.ts'
import { BATCH } from '../ask/spread/points.ts'
import { jobOf } from '../job/index.ts'

/** RFC 4180, one header row with units, SI; an empty cell where there is no figure. Rows in the order of the parts. */
export function spreadCsv(study: SpreadStudy, batches: Batch[]): string {
  const draw = drawing(study.scenario, study)
  const { job } = study.scenario
  const [fates, demands] = [fatesOf(job), demandsOf(job)]
  const figures = jobOf(study.scenario).figures.flatMap(({ id, unit }) =>
    id === 'stepError' ? [] : [unit === '' ? id : `${id} [${unit}]`],
  )
  const fields = ['part', 'seed', 'strategy', 'verdict', 'failed', ...variedPaths(study.scenario), ...figures]
  const order = study.strategies
  const sorted = [...batches].sort((a, b) => a.batch - b.batch || order.indexOf(a.strategy) - order.indexOf(b.strategy))
  const data = sorted.flatMap((batch) =>
    Array.from(batch.fates, (fate, row) => {
      const index = batch.batch * BATCH + row
      const part = draw(index)
      const failed = failedAt(demands, batch, row).join(' ')
      const values = figures.map((_, place) => {
        const value = figureAt(batch, row, place)
        return Number.isNaN(value) ? '' : value
      })
      return [index, part.scenario.run.seed, batch.strategy, fates[fate], failed, ...part.values, ...values]
    }),
  )
  return `${Papa.unparse({ fields, data }, { newline: '\r\n' })}\r\n`
}
