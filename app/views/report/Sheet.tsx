import type { CSSProperties } from 'react'
import { jobOf } from '../../../sim/index.ts'
import { today } from '../../read/today.ts'
import { Appendix } from './Appendix.tsx'
import { Assumed } from './Assumed.tsx'
import { FigureTable } from './FigureTable.tsx'
import { FittedTo } from './FittedTo.tsx'
import { Cautions, Foot, Reproduce } from './Foot.tsx'
import { type Leaving, type Paper, roomOf } from './fit.ts'
import { Glance } from './Glance.tsx'
import { HandedOver } from './HandedOver.tsx'
import { Job } from './Job.tsx'
import { ManyParts } from './ManyParts.tsx'
import { Margins } from './Margins.tsx'
import type { Matter } from './matter.ts'
import { Settings } from './Settings.tsx'
import { TwoAxes } from './TwoAxes.tsx'
import { useFit } from './useFit.ts'

interface Props {
  matter: Matter
  paper: Paper
  /** With further pages. */
  further: boolean
}

/** The report on paper: the first page, as large and as full as fits on it, and further pages where they are wanted. */
export function Sheet({ matter, paper, further }: Props) {
  const { scenario, columns, beside, told, many, loops, fitting, handed } = matter
  const { fit, sheet } = useFit(paper, [scenario, columns, beside, told, many, loops, fitting, handed, further])
  const style = { '--wide': roomOf(paper, fit.size).width, '--size': `${fit.size}pt` } as CSSProperties
  return (
    // Paper is white, whatever the page around it is.
    <article className="report" data-theme="light" data-paper={paper} style={style} ref={sheet}>
      <div className="report-page">
        <header>
          <p>
            {jobOf(scenario).label} report · <b>simulated</b>, not measured · {today()}
          </p>
          <h1>{scenario.name}</h1>
        </header>
        <Job scenario={scenario} fitting={fitting} units={matter.units} left={fit.left} />
        {columns.length === 0 ? (
          <p>No strategy is shown. Choose at least one above.</p>
        ) : (
          <Comparison matter={matter} left={fit.left} />
        )}
        <Foot left={fit.left} further={further} />
      </div>
      {further && <Appendix matter={matter} left={fit.left} />}
    </article>
  )
}

function Comparison({ matter, left }: { matter: Matter; left: readonly Leaving[] }) {
  const { scenario, base, units, columns, beside, told, many, loops, fitting, handed } = matter
  return (
    <>
      <HandedOver column={handed} {...matter} />
      <Glance {...{ scenario, columns, beside, told, units }} />
      {beside && <TwoAxes {...{ scenario, beside, columns, units, left }} />}
      <div className="report-thirds">
        <div>
          <FigureTable scenario={scenario} columns={columns} told={told} units={units} left={left} />
        </div>
        <div>
          {handed && <Settings scenario={scenario} base={base} strategy={handed.strategy} units={units} left={left} />}
          {!left.includes('margins') && <Margins scenario={scenario} units={units} loops={loops} />}
          {!handed && !left.includes('assumed') && <Assumed scenario={scenario} units={units} />}
        </div>
        <div>
          {handed && !left.includes('assumed') && <Assumed scenario={scenario} units={units} />}
          {fitting && <FittedTo fitting={fitting} scenario={scenario} units={units} short={left.includes('log')} />}
          {many && <ManyParts many={many} columns={columns} units={units} short={left.includes('varies')} />}
          <Cautions scenario={scenario} />
          <Reproduce base={base} scenario={scenario} beside={beside} columns={columns} />
        </div>
      </div>
    </>
  )
}
