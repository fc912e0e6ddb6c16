/** The wanted grip force, and what each strategy's setting means in newtons beside the force window. */
import { type CSSProperties, useMemo } from 'react'
import { create } from 'zustand'
import {
  type ForceBand,
  forceWindow,
  type GripResult,
  readPath,
  type Scenario,
  STRATEGIES,
  type StrategyKind,
  stiffWords,
} from '../../sim/index.ts'
import { spokenVerdict } from '../read/result/words.ts'
import { quantityUnit, shownUnit, type UnitSystem } from '../read/units.ts'
import { useResults } from '../store/results.ts'
import { useScenario } from '../store/scenario.ts'
import { useView } from '../store/view.ts'
import { Button } from '../ui/Button.tsx'
import { formatFigure, withUnit } from '../ui/format.ts'
import { NumberField } from '../ui/NumberField.tsx'
import { editMany, endGesture, useFault } from './refusal.ts'

const PATH = 'wanted grip force'
const RANGE = [0.001, 1e6] as const
/** A setting within this share of what the wanted force asks for counts as set to it. */
const CLOSE = 0.01

/** What the person asked for last; it holds for the preset or file it was asked on. */
const useWanted = create<{ force: number; base: Scenario | null }>()(() => ({ force: 0, base: null }))

const expectedOf = (scenario: Scenario) => Number((STRATEGIES[0]?.forceOf(scenario).expected ?? 0).toPrecision(3))

export function WantedForce() {
  const scenario = useScenario((state) => state.scenario)
  const base = useScenario((state) => state.base)
  const system = useView((state) => state.units)
  const asked = useWanted()
  const fault = useFault(PATH)
  const unit = quantityUnit('force', system)
  const window = useMemo(() => forceWindow(scenario), [scenario])
  const rows = STRATEGIES.map((strategy) => ({ strategy, band: strategy.forceOf(scenario) }))
  const force = asked.base === base ? asked.force : expectedOf(scenario)
  const figure = (newtons: number | null) =>
    withUnit(formatFigure(newtons === null ? null : unit.toShown(newtons)), unit.symbol)

  const set = (wanted: number, gesture?: string, typed?: boolean) => {
    const settings = STRATEGIES.map((strategy) => ({
      path: strategy.setting.path,
      value: settingFor(strategy, scenario, wanted),
    }))
    const taken = editMany(PATH, settings, gesture, typed)
    if (taken) useWanted.setState({ force: wanted, base })
    return taken
  }
  const ends = [window.least, window.most, force, ...rows.flatMap(({ band }) => [band.expected, band.most])]
  const top = 1.12 * Math.max(1e-9, ...ends.filter((end) => end !== null))
  const apart = STRATEGIES.some((strategy) => isApart(strategy, scenario, force))
  return (
    <div className="wanted">
      <NumberField
        label="Wanted grip force"
        symbol="F"
        unit={unit}
        value={Math.min(RANGE[1], Math.max(RANGE[0], force))}
        min={RANGE[0]}
        max={RANGE[1]}
        resetTo={Math.min(RANGE[1], Math.max(RANGE[0], expectedOf(base)))}
        note="Normal force at one contact. Sets every strategy so that it should give this force while the jaws creep on; friction, and in a duty the warmth of the magnets, decide how far the force at rest can lie from it."
        fault={fault}
        id="wanted-grip-force"
        onEdit={set}
        onEnd={endGesture}
      />
      <p className="wanted-window">{windowText(window, figure)}</p>
      {rows.map((row) => (
        <Row key={row.strategy.id} {...row} {...{ scenario, window, figure, system, top }} wanted={force} />
      ))}
      {apart && (
        <Button onClick={() => set(force)}>
          Set {rows.length === 1 ? 'it' : 'all'} to {figure(force)}
        </Button>
      )}
    </div>
  )
}

interface RowProps {
  strategy: StrategyKind
  band: ForceBand
  scenario: Scenario
  window: Window
  wanted: number
  figure: Figure
  system: UnitSystem
  /** End of the force axis [N]. */
  top: number
}

/** What one strategy's setting means in newtons. */
function Row({ strategy, band, scenario, window, wanted, figure, system, top }: RowProps) {
  const run = useResults((state) => state.runs[strategy.id])
  const result = run?.scenario === scenario ? run.result : null
  return (
    <div className="wanted-row" style={{ '--hue': `var(--strategy-${strategy.id})` } as CSSProperties}>
      <span className="wanted-name" style={{ color: `var(--strategy-${strategy.id}-text)` }}>
        {strategy.label}
      </span>
      <span className="wanted-setting">{settingText(scenario, strategy.setting, system)}</span>
      <Bar band={band} window={window} wanted={wanted} top={top} />
      <span className="wanted-band">{bandText(band, figure)}</span>
      <span className="wanted-place">{placeText(band, window, result)}</span>
    </div>
  )
}

/** Rounded to what a drive can be told. */
const settingFor = (strategy: StrategyKind, scenario: Scenario, force: number) =>
  Number(strategy.settingFor(scenario, force).toPrecision(4))

const isApart = (strategy: StrategyKind, scenario: Scenario, force: number) => {
  const wanted = settingFor(strategy, scenario, force)
  return Math.abs((readPath(scenario, strategy.setting.path) as number) - wanted) > CLOSE * wanted
}

type Window = ReturnType<typeof forceWindow>
type Figure = (newtons: number | null) => string

function windowText(window: Window, figure: Figure): string {
  const stiff = window.leastStiff === null ? null : figure(window.leastStiff)
  return window.yields ? `${edgesText(window, figure)} ${stiffWords(stiff)}` : edgesText(window, figure)
}

function edgesText({ least, most }: Window, figure: Figure): string {
  if (least !== null && most !== null && least > most)
    return `No force window: it takes ${figure(least)} to hold the part and it is damaged from ${figure(most)}.`
  if (least !== null && most !== null) return `Force window ${figure(least)} to ${figure(most)}.`
  if (least !== null) return `Force window from ${figure(least)}; the part has no damage limit.`
  if (most !== null) return `Force window up to ${figure(most)}; nothing pulls on the part.`
  return 'No force window: nothing pulls on the part and it has no damage limit.'
}

const bandText = (band: ForceBand, figure: Figure) =>
  band.most === null
    ? `${figure(band.expected)}; at rest ${figure(band.least)} or more, as the axis locks itself`
    : `${figure(band.expected)}; at rest ${figure(band.least)} to ${figure(band.most)}`

/** Where the setting lies, and, where the run of it comes out otherwise, that it does. */
function placeText(band: ForceBand, { least, most }: Window, result: GripResult | null): string {
  if (least !== null && most !== null && least > most) return ''
  const most_ = band.most ?? Number.POSITIVE_INFINITY
  if (least !== null && band.expected < least) return 'Below the window.'
  if (most !== null && band.expected > most) return 'Above the window.'
  if (result && result.verdict !== 'held')
    return `The setting is in the window, but the run is not: ${spokenVerdict(result)}.`
  if (result && result.overloads.length > 0) return `In the window, but ${spokenVerdict(result).replace('held, ', '')}.`
  const below = least !== null && band.least < least
  const above = most !== null && most_ > most
  if (below && above) return 'In the window; at rest it can lie outside at either end.'
  if (below) return 'In the window; at rest it can lie below it.'
  return above ? 'In the window; at rest it can lie above it.' : 'In the window.'
}

function settingText(
  scenario: Scenario,
  setting: { path: string; label: string; unit: string },
  system: 'si' | 'us',
): string {
  const unit = shownUnit(setting, system)
  return withUnit(formatFigure(unit.toShown(readPath(scenario, setting.path) as number)), unit.symbol)
}

/** The force axis from 0 to `top`: the window, the strategy's band with a tick at what is expected, and the wanted force. */
function Bar({ band, window, wanted, top }: { band: ForceBand; window: Window; wanted: number; top: number }) {
  const at = (force: number) => `${Math.min(100, (100 * force) / top).toFixed(2)}%`
  const across = (from: number, to: number) => ({ left: at(from), right: `calc(100% - ${at(to)})` })
  return (
    <div className="bar" aria-hidden="true">
      {window.least !== null && <div className="bar-out" style={across(0, window.least)} />}
      {window.most !== null && <div className="bar-out" style={across(window.most, top)} />}
      <div className="bar-window" style={across(window.least ?? 0, window.most ?? top)} />
      <div className="bar-band" style={across(band.least, band.most ?? top)} />
      <div className="bar-wanted" style={{ left: at(wanted) }} />
      <div className="bar-expected" style={{ left: at(band.expected) }} />
    </div>
  )
}
