/** A strategy's share of parts that hold, with its interval, and what becomes of the others. */
import { memo } from 'react'
import {
  demandName,
  type Fate,
  failedDemands,
  fatesOf,
  holdSentence,
  JOBS,
  type JobId,
  percent,
  rangeText,
  type ShareOf,
  type SpreadAnswer,
  STRATEGIES,
  studyWords,
} from '../../../sim/index.ts'
import { toneOf, verdictWord } from '../../read/result/words.ts'

const nameOf = (job: JobId, fate: Fate) => (fate === 'refused' ? `Not ${studyWords(job).acted}` : verdictWord(fate))
export const toneOfFate = (fate: Fate) => (fate === 'refused' ? 'failure' : toneOf(fate))

export const Shares = memo(function Shares({ job, answers }: { job: JobId; answers: SpreadAnswer[] }) {
  return (
    <div className="shares">
      {answers.map((answer) => (
        <StrategyShares key={answer.strategy} job={job} answer={answer} />
      ))}
      <p className="spread-note">
        Intervals hold the true share in 95 of 100 studies. They say how well these laws were sampled, not how well the
        laws fit the parts on your line.
      </p>
    </div>
  )
})

function StrategyShares({ job, answer }: { job: JobId; answer: SpreadAnswer }) {
  const { strategy, shares, fit } = answer
  const { label } = STRATEGIES.find(({ id }) => id === strategy)!
  const { well } = JOBS[job]
  const held = shares[well]!
  const others = fatesOf(job).filter((fate) => fate !== well && (shares[fate]?.count ?? 0) > 0)
  const failed = failedDemands(job, answer)
  return (
    <article className="strategy-shares" aria-label={label}>
      <h2 style={{ color: `var(--strategy-${strategy}-text)` }}>{label}</h2>
      <p className="share-word">{percent(held.share)}</p>
      <p>{holdSentence(job, answer)}.</p>
      <Bar job={job} shares={shares} grips={answer.grips} held={held} />
      <dl>
        {others.map((fate) => (
          <Line key={fate} name={nameOf(job, fate)} share={shares[fate]!} tone={toneOfFate(fate)} />
        ))}
        {fit.count < held.count && (
          <Line name={`${verdictWord(well)}, but not as required`} share={minus(held, fit)} tone="failure" />
        )}
        {failed.map(({ demand, share }) => (
          <Line key={demand} name={`Fails: ${demandName(job, demand)}`} share={share} />
        ))}
      </dl>
      {answer.cut.map(({ path, share }) => (
        <p key={path} className="spread-note">
          Of {percent(share)} of the parts {path} was cut at the end of what is allowed.
        </p>
      ))}
    </article>
  )
}

/** Of a part of a share no interval is claimed. */
const minus = (all: ShareOf, part: ShareOf): ShareOf => ({
  count: all.count - part.count,
  share: all.share - part.share,
  low: Number.NaN,
  high: Number.NaN,
})

function Line({ name, share, tone }: { name: string; share: ShareOf; tone?: string }) {
  return (
    <div data-tone={tone}>
      <dt>{name}</dt>
      <dd>
        {percent(share.share)} {Number.isNaN(share.low) ? '' : <span className="unit">({rangeText(share)})</span>}
      </dd>
    </div>
  )
}

interface BarProps extends Pick<SpreadAnswer, 'shares' | 'grips'> {
  job: JobId
  held: ShareOf
}

/** All parts in one bar, those done well first, with the interval of their share above. */
function Bar({ job, shares, grips, held }: BarProps) {
  const present = fatesOf(job).filter((fate) => (shares[fate]?.count ?? 0) > 0)
  const ends = present.map((_, at) => present.slice(0, at).reduce((sum, fate) => sum + shares[fate]!.count, 0) / grips)
  return (
    <svg className="share-bar" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
      {present.map((fate, at) => (
        <rect
          key={fate}
          className={`fate-${toneOfFate(fate)}`}
          x={100 * ends[at]!}
          y={3}
          width={(100 * shares[fate]!.count) / grips}
          height={7}
        />
      ))}
      <path className="share-interval" d={`M${100 * held.low} 1.2H${100 * held.high}`} />
    </svg>
  )
}
