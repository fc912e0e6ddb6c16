import {
  demandName,
  failedDemands,
  fatesOf,
  grouped,
  JOBS,
  type JobId,
  percent,
  rangeText,
  type SpreadAnswer,
  type SpreadStudy,
  studyWords,
} from '../../../sim/index.ts'
import { verdictWord } from '../../read/result/words.ts'
import { lawText } from '../../read/spread/lawText.ts'
import { nameOf } from '../../read/spread/name.ts'
import type { Answers } from '../../read/spread/useAnswers.ts'
import type { UnitSystem } from '../../read/units.ts'
import type { Column } from './columns.ts'

interface Props {
  many: Answers
  columns: Column[]
  units: UnitSystem
  /** Without the list of what varies. */
  short: boolean
}

const SAMPLINGS: Record<SpreadStudy['sampling'], string> = {
  sobol: 'Scrambled Sobol’ points',
  hypercube: 'Latin hypercubes',
  random: 'Random points',
}

/** Of the parts of the study at hand, the shares that hold and what the others fail, with what it takes to make it again. */
export function ManyParts({ many: { study, answers }, columns, units, short }: Props) {
  const { scenario, seed, sampling } = study
  const grips = Math.max(...answers.map((answer) => answer.grips))
  const varies = scenario.spread.varies
  const laws = varies.map((varied) => `${nameOf(scenario, varied.path)} (${lawText(scenario, varied, units)})`)
  return (
    <section aria-labelledby="report-many">
      <h2 id="report-many">Of {grouped(grips)} parts</h2>
      <ul className="report-list">
        {columns.map(({ strategy, label }) => {
          const answer = answers.find((each) => each.strategy === strategy)
          return answer && <li key={strategy}>{sentence(scenario.job, label, answer)}</li>
        })}
      </ul>
      <p className="report-small">
        In brackets 95 % limits. {SAMPLINGS[sampling]}, seed {seed}.{' '}
        {short
          ? `${varies.length} quantities differ from part to part.`
          : `From part to part differ: ${laws.join('; ')}.`}{' '}
        Whether your parts differ so, no interval says.
      </p>
    </section>
  )
}

/** "Current clamp: 65.0 % hold (40.8 to 84.6 %); most others: crushed, 35.0 %." */
function sentence(job: JobId, label: string, answer: SpreadAnswer) {
  const { fit, shares } = answer
  const held = shares[JOBS[job].well]!
  const asked = fit.count < held.count && `, ${percent(fit.share)} as required (${rangeText(fit)})`
  const most = mostOf(job, answer)
  return (
    <>
      {label}:{' '}
      <b>
        {percent(held.share)} {studyWords(job).many}
      </b>{' '}
      ({rangeText(held)}){asked}
      {most && `; most fail by: ${most}`}.
    </>
  )
}

/** What becomes of the most that are not held as required; null: all are. */
function mostOf(job: JobId, answer: SpreadAnswer): string | null {
  const fates = fatesOf(job).flatMap((fate) =>
    fate === JOBS[job].well || fate === 'refused'
      ? []
      : [{ name: verdictWord(fate).toLowerCase(), count: answer.shares[fate]?.count ?? 0 }],
  )
  const demands = failedDemands(job, answer).map(({ demand, share: { count } }) => ({
    name: demandName(job, demand).toLowerCase(),
    count,
  }))
  const [most] = [...fates, ...demands].filter(({ count }) => count > 0).sort((a, b) => b.count - a.count)
  return most ? `${most.name}, ${percent(most.count / answer.grips)}` : null
}
