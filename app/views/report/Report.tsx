import { useEffect, useMemo, useState } from 'react'
import { jobOf, recommend, type StrategyId } from '../../../sim/index.ts'
import { StrategyChooser } from '../../read/result/StrategyChooser.tsx'
import { useAnswersAtHand } from '../../read/spread/useAnswers.ts'
import { useKept } from '../../read/study/useKept.ts'
import { useBeside } from '../../store/beside.ts'
import { useFittingHere } from '../../store/fitted.ts'
import { useScenario } from '../../store/scenario.ts'
import { useSpread } from '../../store/spread.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { Pick } from '../../ui/Choice.tsx'
import type { Column } from './columns.ts'
import { useColumns } from './columns.ts'
import type { Paper } from './fit.ts'
import { type Matter, missingFrom } from './matter.ts'
import { Sheet } from './Sheet.tsx'
import { useCauses } from './useCauses.ts'
import './parts.css'
import './report.css'

type Handed = StrategyId | 'recommended'

/** One page to hand over: what was asked, what came out, why, with what settings, and how to reproduce it. */
export function Report() {
  const [handed, setHanded] = useState<Handed>('recommended')
  const [further, setFurther] = useState(false)
  const matter = useMatter(handed)
  const paper: Paper = matter.units === 'us' ? 'letter' : 'a4'
  const missing = missingFrom(matter)
  const complete = missing.length === 0
  useTitle(`${matter.scenario.name}, ${jobOf(matter.scenario).label.toLowerCase()} report`)
  return (
    <div className="report-view" data-complete={complete}>
      <div className="report-tools">
        <Button disabled={!complete} onClick={() => window.print()}>
          Print or save as PDF
        </Button>
        <label className="toggle">
          <input type="checkbox" checked={further} onChange={({ target }) => setFurther(target.checked)} />
          Further pages with every parameter
        </label>
        <StrategyChooser />
        <Pick<Handed> label="Hand over" options={choices(matter.columns)} value={handed} onChoose={setHanded} />
        <p role="status">
          {complete
            ? 'The report is complete.'
            : `Being worked out: ${missing.join(', ')}. It prints when all is there.`}
        </p>
      </div>
      {/* Named pages in the style sheet would leave a blank first page in some browsers. */}
      <style>{`@page { size: ${paper === 'letter' ? 'letter' : 'A4'} }`}</style>
      <p className="report-waits">This report is not complete yet: {missing.join(', ')} are still being worked out.</p>
      <Sheet matter={matter} paper={paper} further={further} />
    </div>
  )
}

function useMatter(handed: Handed): Matter {
  const scenario = useScenario((state) => state.scenario)
  const base = useScenario((state) => state.base)
  const units = useView((state) => state.units)
  const columns = useColumns()
  const second = useBeside()
  const beside = useMemo(
    () => (second?.fitted.ok ? { title: second.axis.title, scenario: second.fitted.scenario } : null),
    [second],
  )
  const told = useCauses(scenario, columns)
  const loops = useKept('loops', scenario)
  const many = useMany()
  const fitting = useFittingHere()
  const recommendation = useMemo(
    () =>
      recommend(
        scenario,
        columns.flatMap(({ run }) => run?.result ?? []),
      ),
    [scenario, columns],
  )
  const strategy = handed === 'recommended' ? recommendation.best?.strategy : handed
  const column = columns.find((each) => each.strategy === strategy)
  return { scenario, base, units, columns, beside, told, many, loops, fitting, recommendation, handed: column }
}

/** A study that has ended, or rests. */
function useMany() {
  const running = useSpread(({ status }) => status === 'running')
  const found = useAnswersAtHand()
  return running || !found || found.answers.length === 0 ? null : found
}

const choices = (columns: Column[]): { value: Handed; label: string }[] => [
  { value: 'recommended', label: 'What the figures recommend' },
  ...columns.map(({ strategy, label }) => ({ value: strategy, label })),
]

/** Browsers name the saved file after the page's title. */
function useTitle(title: string) {
  useEffect(() => {
    const before = document.title
    document.title = title
    return () => {
      document.title = before
    }
  }, [title])
}
