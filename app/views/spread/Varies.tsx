/** What varies: a quantity and its law each, what is sensible to begin with, and what goes together. */
import { type ReactNode, useId } from 'react'
import {
  exponentOf,
  lawOf,
  quantityAt,
  readPath,
  type Scenario,
  shownUnit,
  type UsualSpread,
  usualSpreads,
  type Varied,
} from '../../../sim/index.ts'
import { edit, editMany, endGesture, useFault } from '../../parameters/refusal.ts'
import { lawText } from '../../read/spread/lawText.ts'
import { nameOf } from '../../read/spread/name.ts'
import { useNominal } from '../../store/lent.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { Choice, Pick } from '../../ui/Choice.tsx'
import { formatPlain, withUnit } from '../../ui/format.ts'
import { NumberField } from '../../ui/NumberField.tsx'
import { quantitiesOf } from './quantities.ts'
import { Sketch } from './Sketch.tsx'
import { Together } from './Together.tsx'
import { Values } from './Values.tsx'

const PATH = 'spread.varies'

const put = (varies: Varied[], gesture?: string, typed = false) => edit(PATH, varies, gesture, typed)
/** What no longer varies no longer goes together with anything. */
function remove(path: string): void {
  const { varies, together } = useScenario.getState().scenario.spread
  editMany(PATH, [
    { path: PATH, value: varies.filter((each) => each.path !== path) },
    { path: 'spread.together', value: together.filter(({ paths }) => !paths.includes(path)) },
  ])
}

const present = () => useScenario.getState().scenario.spread.varies

export function Varies() {
  const scenario = useNominal()
  const fault = useFault(PATH)
  const usual = usualSpreads(scenario)
  return (
    <>
      {scenario.spread.varies.map((varied, at) => (
        <Entry key={varied.path} scenario={scenario} varied={varied} at={at} />
      ))}
      <span className="field-fault" aria-live="polite">
        {fault}
      </span>
      <Add scenario={scenario} />
      {usual.length > 0 && <Usual scenario={scenario} usual={usual} />}
      {scenario.spread.varies.length > 1 && <Together />}
    </>
  )
}

const LAWS: { value: Varied['law']; label: string }[] = [
  { value: 'normal', label: 'Normal' },
  { value: 'uniform', label: 'Uniform' },
  { value: 'triangular', label: 'Triangular' },
  { value: 'lognormal', label: 'Lognormal' },
  { value: 'measured', label: 'Measured list' },
]

interface EntryProps {
  scenario: Scenario
  varied: Varied
  at: number
}

function Entry({ scenario, varied, at }: EntryProps) {
  const units = useView((state) => state.units)
  const schema = quantityAt(scenario, varied.path)
  const value = readPath(scenario, varied.path) as number
  if (!schema || typeof value !== 'number') return null
  const unit = shownUnit(schema, units, exponentOf(scenario))
  const change = (next: Varied, gesture?: string, typed?: boolean) => put(present().with(at, next), gesture, typed)
  const name = nameOf(scenario, varied.path)
  return (
    <fieldset className="set varied">
      <legend>{name}</legend>
      <Button quiet className="set-remove" aria-label={`${name} does not vary`} onClick={() => remove(varied.path)}>
        remove
      </Button>
      <p className="varied-value">
        {withUnit(formatPlain(unit.toShown(value), 4), unit.symbol)} in the file
        <Sketch law={lawOf(varied)} value={value} unit={unit} />
      </p>
      <Pick
        label="Law"
        bare
        options={LAWS}
        value={varied.law}
        onChoose={(law) => change(begin(varied.path, law as Varied['law'], value))}
      />
      <Sizes varied={varied} value={value} change={change} scenario={scenario} />
    </fieldset>
  )
}

/** A law as it starts when it is chosen. */
function begin(path: string, law: Varied['law'], value: number): Varied {
  const share = value !== 0
  const start: Record<Varied['law'], Varied> = {
    normal: { path, law, share, sd: share ? 0.02 : 0.01 },
    uniform: { path, law, share, half: share ? 0.05 : 0.01 },
    triangular: { path, law, share, low: share ? 0.95 : -0.01, mode: share ? 1 : 0, high: share ? 1.05 : 0.01 },
    lognormal: { path, law, share: false, factor: 1.1 },
    measured: { path, law, share: false, values: [value] },
  }
  return start[law]
}

type Change = (next: Varied, gesture?: string, typed?: boolean) => boolean

interface SizesProps {
  varied: Varied
  value: number
  scenario: Scenario
  change: Change
}

function Sizes({ varied, value, scenario, change }: SizesProps) {
  const { law, share } = varied
  const size = { varied, scenario, change }
  const both = value !== 0 && law !== 'lognormal' && law !== 'measured' && (
    <Choice
      label="Sizes"
      bare
      options={[
        { value: 'share', label: 'as a share' },
        { value: 'own', label: 'in its unit' },
      ]}
      value={share ? 'share' : 'own'}
      onChoose={(to) => change(rescaled(varied, value, to === 'share'))}
    />
  )
  return (
    <>
      <div className="varied-law">
        {both}
        {law === 'normal' && <Given {...size} />}
      </div>
      {law === 'normal' && <Normal {...size} />}
      {law === 'uniform' && <Size {...size} id="half" label="Half width ±" />}
      {law === 'triangular' && (
        <>
          <Size {...size} id="low" label="Low end" signed />
          <Size {...size} id="mode" label="Most likely" signed />
          <Size {...size} id="high" label="High end" signed />
        </>
      )}
      {law === 'lognormal' && (
        <NumberField
          label="Factor"
          unit={shownUnit({ unit: '' }, 'si')}
          value={varied.factor!}
          min={1}
          max={100}
          usual={[1.02, 1.5]}
          note="Two thirds of the values lie within this factor of the one in the file, above or below."
          onEdit={(factor, gesture, typed) => change({ ...varied, factor }, gesture, typed)}
          onEnd={endGesture}
        />
      )}
      {law === 'measured' && <Values varied={varied} scenario={scenario} change={change} />}
    </>
  )
}

/** By a standard deviation, or by a tolerance and how capable the process is of it. */
function Given({ varied, change }: Omit<SizesProps, 'value'>) {
  const { sd, tolerance, cpk, ...rest } = varied
  const swap = (to: string) =>
    change(to === 'sd' ? { ...rest, sd: tolerance! / (3 * cpk!) } : { ...rest, tolerance: 4 * sd!, cpk: 4 / 3 })
  return (
    <Choice
      label="Given by"
      bare
      options={[
        { value: 'sd', label: 'deviation' },
        { value: 'cpk', label: 'tolerance' },
      ]}
      value={sd === undefined ? 'cpk' : 'sd'}
      onChoose={swap}
    />
  )
}

function Normal(size: Omit<SizesProps, 'value'>) {
  const { varied, change } = size
  if (varied.sd !== undefined)
    return (
      <>
        <Size {...size} id="sd" label="Standard deviation" />
        <Cut {...size} />
      </>
    )
  return (
    <>
      <Size {...size} id="tolerance" label="Tolerance ±" />
      <NumberField
        label="Capability"
        symbol="C_pk"
        unit={shownUnit({ unit: '' }, 'si')}
        value={varied.cpk!}
        min={0.1}
        max={10}
        usual={[1, 2]}
        note="Of a centred process: the tolerance over three standard deviations."
        onEdit={(next, gesture, typed) => change({ ...varied, cpk: next }, gesture, typed)}
        onEnd={endGesture}
      />
    </>
  )
}

/** Values further off do not occur, as where parts are sorted out. */
function Cut(size: Omit<SizesProps, 'value'>) {
  const { varied, change } = size
  const { within, ...rest } = varied
  if (within !== undefined)
    return <Size {...size} id="within" label="Sorted out beyond ±" clear={{ words: 'none', act: () => change(rest) }} />
  return (
    <Button quiet onClick={() => change({ ...varied, within: 3 * varied.sd! })}>
      Some are sorted out
    </Button>
  )
}

type SizeId = 'within' | 'sd' | 'tolerance' | 'half' | 'low' | 'mode' | 'high'

interface SizeProps extends Omit<SizesProps, 'value'> {
  id: SizeId
  label: string
  signed?: boolean
  clear?: { words: string; act(): void }
}

/** A size in per cent of the value, or in the quantity's own unit. */
function Size({ varied, scenario, change, id, label, signed = false, clear }: SizeProps) {
  const units = useView((state) => state.units)
  const schema = quantityAt(scenario, varied.path)!
  // A difference of temperatures has no offset, so it stays in kelvins.
  const own = schema.unit === '°C' ? shownUnit({ unit: 'K' }, 'si') : shownUnit(schema, units, exponentOf(scenario))
  const unit = varied.share ? shownUnit({ unit: '', shown: '%' }, units) : own
  const most = varied.share ? 100 : Math.max(Math.abs(schema.minimum), Math.abs(schema.maximum))
  return (
    <NumberField
      label={label}
      unit={unit}
      value={varied[id]!}
      min={signed ? -most : 0}
      max={most}
      clear={clear}
      onEdit={(next, gesture, typed) => change({ ...varied, [id]: next }, gesture, typed)}
      onEnd={endGesture}
    />
  )
}

/** The same law with its sizes as shares of the value, or in the quantity's own unit. */
function rescaled(varied: Varied, value: number, share: boolean): Varied {
  if (share === varied.share) return varied
  const unit = Math.abs(value)
  const scale = (size: number | undefined) =>
    size === undefined ? undefined : Number((share ? size / unit : size * unit).toPrecision(6))
  const sizes = Object.fromEntries(
    (['sd', 'tolerance', 'within', 'half', 'low', 'mode', 'high'] as const).flatMap((id) => {
      const size = scale(varied[id])
      return size === undefined ? [] : [[id, size]]
    }),
  )
  return { ...varied, ...sizes, share }
}

/** Quantities that make no part differ from another. */
const NOT = /^(run|requirements|spread|arm\.moves|approach|strategies|servo|events)\b/

function Add({ scenario }: { scenario: Scenario }) {
  const varies = scenario.spread.varies.map(({ path }) => path)
  const paths = quantitiesOf(scenario, NOT)
  const options = [
    { value: '', label: 'Another quantity …' },
    ...paths.filter((path) => !varies.includes(path)).map((path) => ({ value: path, label: nameOf(scenario, path) })),
  ]
  const add = (path: string) =>
    path !== '' && put([...present(), begin(path, 'normal', readPath(scenario, path) as number)])
  return <Pick label="Let a quantity vary" bare options={options} value="" onChoose={add} />
}

function Usual({ scenario, usual }: { scenario: Scenario; usual: UsualSpread[] }) {
  const units = useView((state) => state.units)
  const id = useId()
  return (
    <details className="usual" open={scenario.spread.varies.length === 0}>
      <summary id={id}>Usual spreads</summary>
      <p className="spread-note">Common practice, no source: to begin with, until yours are measured.</p>
      <Button onClick={() => put([...present(), ...usual.map(({ varied }) => varied)])}>Take all</Button>
      <ul aria-labelledby={id}>
        {usual.map(({ varied, why }) => (
          <Offer key={varied.path} why={why} act={() => put([...present(), varied])}>
            {nameOf(scenario, varied.path)}, {lawText(scenario, varied, units)}
          </Offer>
        ))}
      </ul>
    </details>
  )
}

const Offer = ({ why, act, children }: { why: string; act(): void; children: ReactNode }) => (
  <li>
    <Button quiet onClick={act}>
      {children}
    </Button>
    <span className="spread-note">{why}</span>
  </li>
)
