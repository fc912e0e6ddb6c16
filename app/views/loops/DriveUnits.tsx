import { useMemo } from 'react'
import {
  type DriveScales,
  driveSheet,
  exponentOf,
  type JobId,
  type JudgedSetting,
  judgedSettings,
  remarkOn,
  type Scenario,
  STRATEGIES,
  scalesFrom,
  settingLabel,
  settingsCsv,
  settingsMarkdown,
  wordingOf,
} from '../../../sim/index.ts'
import { quantityUnit, shownUnit, type UnitSystem } from '../../read/units.ts'
import { download, fileName } from '../../store/file.ts'
import { useResults } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { Segments } from '../../ui/Choice.tsx'
import { formatFigure, formatPlain } from '../../ui/format.ts'
import { NumberField } from '../../ui/NumberField.tsx'
import { UnitText } from '../../ui/Symbols.tsx'
import { Entered } from './Entered.tsx'
import { scaleFields } from './scales.ts'
import { useLoopsState } from './state.ts'

/** Gains, limits and thresholds as the integers of a drive whose scale factors the person enters. */
export function DriveUnits() {
  const scenario = useScenario((state) => state.scenario)
  const entered = useLoopsState((state) => state.scales)
  const system = useView((state) => state.units)
  const suggested = useMemo(() => scalesFrom(scenario), [scenario])
  const scales = useMemo(() => ({ ...suggested, ...entered }), [suggested, entered])
  const settings = useMemo(() => judgedSettings(scenario, scales), [scenario, scales])
  const wrong = settings.filter(({ overflow, lost }) => overflow || lost)
  const save = (text: string, type: string, ending: string) =>
    download(new Blob([text], { type }), `${fileName(scenario.name)}-settings.${ending}`)
  return (
    <section className="loops-drive" aria-label="Drive units">
      <h2>Drive units</h2>
      <p className="loops-small">
        Scale factors from the drive’s manual. Until they are entered they follow the steps of encoder, current
        measurement and gauge on the bench.
      </p>
      <ScaleFields {...{ scales, suggested, system }} job={scenario.job} />
      <p role="status">
        {wrong.length === 0
          ? `All ${settings.length} settings fit the word.`
          : `${wrong.length} of ${settings.length} settings do not come through: ${wrong.map((each) => settingLabel(each, scenario.job)).join('; ')}.`}
      </p>
      <SettingsTable settings={settings} system={system} />
      <Entered scenario={scenario} scales={scales} />
      <p className="loops-save">
        <Button
          onClick={() =>
            save(
              settingsMarkdown(driveSheet(scenario, scales), wordingOf(system), gripsOf(scenario)),
              'text/markdown',
              'md',
            )
          }
        >
          Settings sheet (Markdown)
        </Button>
        <Button onClick={() => save(settingsCsv(settings, scenario.job), 'text/csv', 'csv')}>Settings (CSV)</Button>
      </p>
    </section>
  )
}

/** The runs on the bench of this very scenario. */
const gripsOf = (scenario: Scenario) =>
  STRATEGIES.flatMap(({ id, label }) => {
    const run = useResults.getState().runs[id]
    return run?.result && run.scenario === scenario ? [{ label, scenario, result: run.result }] : []
  })

interface ScaleFieldsProps {
  scales: DriveScales
  suggested: DriveScales
  system: UnitSystem
  job: JobId
}

function ScaleFields({ scales, suggested, system, job }: ScaleFieldsProps) {
  const set = (change: Partial<DriveScales>) =>
    useLoopsState.setState((state) => ({ scales: { ...state.scales, ...change } }))
  return (
    <div className="loops-scales">
      {scaleFields(job).map(({ key, label, unit, min, max, integer, note }) => (
        <NumberField
          key={key}
          label={label}
          unit={unit(system)}
          value={scales[key]}
          min={min}
          max={max}
          integer={integer}
          note={note}
          resetTo={suggested[key]}
          onEdit={(value) => set({ [key]: value })}
        />
      ))}
      <Segments
        label="Word"
        options={[
          { value: '16', label: '16 bit' },
          { value: '32', label: '32 bit' },
        ]}
        value={scales.wordBits === 16 ? '16' : '32'}
        onChoose={(bits) => set({ wordBits: bits === '16' ? 16 : 32 })}
      />
    </div>
  )
}

function SettingsTable({ settings, system }: { settings: JudgedSetting[]; system: UnitSystem }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section className="loops-scroll" tabIndex={0} aria-label="Settings in drive units">
      <table className="loops-table">
        <thead>
          <tr>
            <th scope="col">Setting</th>
            <th scope="col" className="figure">
              Value
            </th>
            <th scope="col" className="figure">
              Integer
            </th>
            <th scope="col" className="figure">
              Means
            </th>
            <th scope="col" className="figure">
              Rounding <span className="unit">%</span>
            </th>
            <th scope="col">Remark</th>
          </tr>
        </thead>
        <tbody>
          {settings.map((setting) => (
            <SettingRow key={setting.path} setting={setting} system={system} />
          ))}
        </tbody>
      </table>
    </section>
  )
}

function SettingRow({ setting, system }: { setting: JudgedSetting; system: UnitSystem }) {
  const exponent = useScenario((state) => exponentOf(state.scenario))
  const job = useScenario((state) => state.scenario.job)
  const unit = setting.unit === 's' ? quantityUnit('shortTime', system) : shownUnit(setting, system, exponent)
  const remark = remarkOn(setting, job, wordingOf(system))
  const error = setting.error === null ? null : setting.error * 100
  return (
    <tr data-wrong={setting.overflow || setting.lost}>
      <th scope="row">{settingLabel(setting, job)}</th>
      <td className="figure">
        {formatPlain(unit.toShown(setting.value), 5)} <UnitText symbol={unit.symbol} />
      </td>
      <td className="figure">{String(setting.integer).replace('-', '−')}</td>
      <td className="figure">{setting.overflow ? '—' : formatPlain(unit.toShown(setting.means), 5)}</td>
      <td className="figure">{setting.overflow ? '—' : formatFigure(error, 2)}</td>
      <td className="remark">
        {setting.overflow && 'Overflow: '}
        {remark}
      </td>
    </tr>
  )
}
