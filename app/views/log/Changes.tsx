/** What the fitted axis changes: margins, designed gains and verdicts, as assumed and as fitted, side by side. */
import { type GainDesign, jobOf, readPath, type Scenario, strategiesOn } from '../../../sim/index.ts'
import { LOOP_LABELS } from '../../read/loops/lines.ts'
import { VerdictWord } from '../../read/result/VerdictWord.tsx'
import { settingLabel, settingText } from '../../read/scenario/setting.ts'
import { useStudy } from '../../read/study/useStudy.ts'
import { effortUnit } from '../../read/units.ts'
import { useView } from '../../store/view.ts'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { MarginChanges } from './MarginChanges.tsx'

interface Props {
  before: Scenario
  after: Scenario
}

const WAITS = '…'

export function Changes({ before, after }: Props) {
  const job = jobOf(before)
  const peak = job.figures.find(({ id }) => id === job.tune.peak)!
  const loops = [useStudy('loops', before), useStudy('loops', after)] as const
  const grips = [useStudy('grips', before), useStudy('grips', after)] as const
  const gains = [useStudy('gains', before), useStudy('gains', after)] as const
  const failed = [...loops, ...grips, ...gains].find(({ status }) => status === 'failed')
  return (
    <section className="log-changes" aria-label="What it changes">
      <h3>What it changes</h3>
      <MarginChanges assumed={loops[0].items[0]} fitted={loops[1].items[0]} />
      <GainChanges bench={before} assumed={gains[0].items} fitted={gains[1].items} />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className="log-scroll" tabIndex={0} aria-label="Verdicts, as assumed and as fitted">
        <table className="log-values">
          <thead>
            <tr>
              <th scope="col">Verdict, {peak.label.toLowerCase()}</th>
              <th scope="col">as assumed</th>
              <th scope="col">as fitted</th>
            </tr>
          </thead>
          <tbody>
            {strategiesOn(job).map(({ id, label }) => (
              <tr key={id}>
                <th scope="row">{label}</th>
                {grips.map(({ items }, column) => {
                  const result = items.find(({ strategy }) => strategy === id)?.result
                  return (
                    <td key={column}>
                      {result ? (
                        <>
                          <VerdictWord result={result} /> <Peak scenario={before} effort={peak.value(result)} />
                        </>
                      ) : (
                        WAITS
                      )}
                    </td>
                  )
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {failed && <p role="alert">It could not be worked out: {failed.message}</p>}
    </section>
  )
}

function Peak({ scenario, effort }: { scenario: Scenario; effort: number | null }) {
  const { symbol, toShown } = effortUnit(
    scenario,
    useView((state) => state.units),
  )
  return <span className="log-peak">{withUnit(formatFigure(effort === null ? null : toShown(effort)), symbol)}</span>
}

interface GainProps {
  bench: Scenario
  assumed: GainDesign[]
  fitted: GainDesign[]
}

/** The gains that the loops' first method gives each axis, without a wish for more. */
function GainChanges({ bench, assumed, fitted }: GainProps) {
  const units = useView((state) => state.units)
  const text = (path: string, value: unknown) => settingText(bench, path, value, units)
  const editOf = (designs: GainDesign[], loop: string, path: string) =>
    designs.find((each) => each.loop === loop)?.edits.find((edit) => edit.path === path)
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section className="log-scroll" tabIndex={0} aria-label="Designed gains, as assumed and as fitted">
      <table className="log-values">
        <thead>
          <tr>
            <th scope="col">Gains by rule</th>
            <th scope="col">on the bench</th>
            <th scope="col">as assumed</th>
            <th scope="col">as fitted</th>
          </tr>
        </thead>
        <tbody>
          {assumed.length === 0 && (
            <tr>
              <th scope="row">Loops</th>
              <td>{WAITS}</td>
              <td>{WAITS}</td>
              <td>{WAITS}</td>
            </tr>
          )}
          {assumed.flatMap(({ loop, label, edits }) =>
            edits.map(({ path, value }) => {
              const now = editOf(fitted, loop, path)
              return (
                <tr key={`${loop} ${path}`}>
                  <th scope="row" title={label}>
                    {LOOP_LABELS[loop]} loop: {settingLabel(bench.actuator.kind, path).split(', ').at(-1)}
                  </th>
                  <td>{text(path, readPath(bench, path))}</td>
                  <td>{text(path, value)}</td>
                  <td>{now ? text(path, now.value) : fitted.length > 0 ? text(path, null) : WAITS}</td>
                </tr>
              )
            }),
          )}
        </tbody>
      </table>
    </section>
  )
}
