import { useEffect, useState } from 'react'
import type { LoopsResult, Scenario, StrategyId } from '../../../sim/index.ts'
import { StrategyChooser } from '../../read/result/StrategyChooser.tsx'
import { type Answered, useKept } from '../../read/study/useKept.ts'
import type { UnitSystem } from '../../read/units.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { Appendix } from './Appendix.tsx'
import { assumed } from './assumed.ts'
import { type Column, ended, useColumns } from './columns.ts'
import { FigureTable } from './FigureTable.tsx'
import { Cautions, Foot, Reproduce } from './Foot.tsx'
import { Glance } from './Glance.tsx'
import { Job, SHORT_NOTES } from './Job.tsx'
import { Margins } from './Margins.tsx'
import { Settings } from './Settings.tsx'
import { type Told, useCauses } from './useCauses.ts'
import './parts.css'
import './report.css'

/** One page to hand over: what was asked, what came out, why, with what settings, and how to reproduce it. */
export function Report() {
  const scenario = useScenario((state) => state.scenario)
  const base = useScenario((state) => state.base)
  const units = useView((state) => state.units)
  const columns = useColumns()
  const told = useCauses(scenario, columns)
  const loops = useKept('loops', scenario)
  const [all, setAll] = useState(false)
  useTitle(`${scenario.name}, grip report`)
  return (
    <div className="report-view">
      <div className="report-tools">
        <Button onClick={() => window.print()}>Print or save as PDF</Button>
        <label className="toggle">
          <input type="checkbox" checked={all} onChange={({ target }) => setAll(target.checked)} />
          Further pages with every parameter
        </label>
        <StrategyChooser />
        <p role="status">{progress(columns, told, loops)}</p>
      </div>
      {/* Named pages in the style sheet would leave a blank first page in some browsers. */}
      <style>{`@page { size: ${units === 'us' ? 'letter' : 'A4'} }`}</style>
      {/* Paper is white, whatever the page around it is. */}
      <article className="report" data-theme="light" data-paper={units === 'us' ? 'letter' : 'a4'}>
        <header>
          <p>Grip report</p>
          <h1>{scenario.name}</h1>
        </header>
        <Job scenario={scenario} units={units} />
        {columns.length === 0 ? (
          <p>No strategy is shown. Choose at least one above.</p>
        ) : (
          <Comparison {...{ scenario, base, units, columns, told, loops }} />
        )}
        <Foot scenario={scenario} />
        {(all || scenario.notes.length > SHORT_NOTES) && (
          <Appendix scenario={scenario} base={base} units={units} parameters={all} />
        )}
      </article>
    </div>
  )
}

interface ComparisonProps {
  scenario: Scenario
  base: Scenario
  units: UnitSystem
  columns: Column[]
  told: Partial<Record<StrategyId, Told>>
  loops: Answered<LoopsResult>
}

function Comparison({ scenario, base, units, columns, told, loops }: ComparisonProps) {
  return (
    <>
      <Glance scenario={scenario} columns={columns} told={told} units={units} />
      <div className="report-thirds">
        <div>
          <FigureTable scenario={scenario} columns={columns} told={told} units={units} />
          <Margins scenario={scenario} units={units} loops={loops} />
        </div>
        <Settings scenario={scenario} base={base} columns={columns} units={units} />
        <div>
          <Assumed scenario={scenario} units={units} />
          <Cautions />
          <Reproduce scenario={scenario} columns={columns} />
        </div>
      </div>
    </>
  )
}

function Assumed({ scenario, units }: { scenario: Scenario; units: UnitSystem }) {
  return (
    <section aria-labelledby="report-assumed">
      <h2 id="report-assumed">Assumed</h2>
      <ul className="report-list">
        {assumed(scenario, units).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </section>
  )
}

/** What is still missing from the report. */
function progress(columns: Column[], told: Partial<Record<StrategyId, Told>>, loops: Answered<LoopsResult>): string {
  const waiting = [
    columns.every(ended) ? '' : 'grips',
    columns.every(({ strategy, run }) => run?.status === 'failed' || told[strategy]) ? '' : 'causes',
    loops.busy ? 'margins' : '',
    columns.every(isChecked) ? '' : 'step errors',
  ].filter((each) => each !== '')
  return waiting.length > 0 ? `Being worked out: ${waiting.join(', ')}.` : 'The report is complete.'
}

/** Held against a finer run, whether or not it has a step error. */
const isChecked = ({ run }: Column) => (run?.result ? run.result.stepErrors !== null : run?.status === 'failed')

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
