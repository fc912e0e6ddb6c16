import { useMemo, useState } from 'react'
import { STRATEGIES, type StrategyId, studyWords, whyRule, whySentence, wordingOf } from '../../../sim/index.ts'
import { axisTitle } from '../../read/axes/names.ts'
import { VerdictWord } from '../../read/result/VerdictWord.tsx'
import { noResult } from '../../read/result/words.ts'
import { nameOf } from '../../read/stage/moments.ts'
import { useRested } from '../../read/study/useRested.ts'
import { useStudy } from '../../read/study/useStudy.ts'
import { WhyChart } from '../../read/why/WhyChart.tsx'
import type { RunView } from '../../store/results.ts'
import { useView } from '../../store/view.ts'
import { Segments } from '../../ui/Choice.tsx'
import { NoRun } from './NoRun.tsx'
import type { SlideProps } from './Present.tsx'
import { firstToTell } from './standing.ts'

/** What made the effort of one strategy, on either axis: a sentence and its chart. The one that failed comes first. */
export function Because({ runs, beside }: SlideProps) {
  const [onSecond, setOnSecond] = useState(false)
  const [chosen, setChosen] = useState<StrategyId | null>(null)
  const run = runs.find(({ strategy }) => strategy === chosen) ?? firstToTell(runs)
  const options = useMemo(
    () =>
      STRATEGIES.filter(({ id }) => runs.some(({ strategy }) => strategy === id)).map(({ id, label }) => ({
        value: id,
        label,
      })),
    [runs],
  )
  if (!run) return <NoRun />
  const second = onSecond ? beside.find(({ strategy }) => strategy === run.strategy) : undefined
  return (
    <div className="because">
      {options.length > 1 && (
        <Segments<StrategyId> bare label="Strategy" options={options} value={run.strategy} onChoose={setChosen} />
      )}
      {beside.length > 0 && (
        <Segments
          bare
          label="Axis"
          options={[
            { value: 'own', label: axisTitle(run.scenario) },
            { value: 'beside', label: `○ ${beside[0]?.axis}` },
          ]}
          value={second ? 'beside' : 'own'}
          onChoose={(value) => setOnSecond(value === 'beside')}
        />
      )}
      <Told key={nameOf(second ?? run)} run={second ?? run} />
    </div>
  )
}

function Told({ run }: { run: RunView }) {
  const { strategy, result, axis } = run
  const none = noResult(run)
  const units = useView((state) => state.units)
  const rested = useRested(strategy, axis !== undefined)
  const { items, status, message } = useStudy('why', rested)
  const why = items[0]
  return (
    <>
      <p className="because-sentence" role="status">
        {result && (
          <strong>
            <VerdictWord result={result} />.
          </strong>
        )}{' '}
        {none?.why}
        {status === 'failed' && `This could not be worked out: ${message}`}
        {!none &&
          status !== 'failed' &&
          !(rested && why) &&
          `Taking the ${studyWords(run.scenario.job).effort} apart …`}
        {rested && why && whySentence(rested.scenario, why, wordingOf(units))}
      </p>
      {why && (
        <>
          <div className="because-chart">
            <WhyChart why={why} units={units} />
          </div>
          {why.force !== null && <p className="because-rule">{whyRule(why)}</p>}
        </>
      )}
    </>
  )
}
