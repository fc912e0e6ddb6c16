/**
 * A grip to the loops: in free air, or in contact with the softest, the nominal and the stiffest part; with a rounded part that relaxes
 * also with the stiffest one after it has relaxed, squeezed further by then and so stiffer to the touch.
 */
import { lawOf } from '../../job/grip/contact/laws.ts'
import { gripOutput } from '../../job/grip/fill.ts'
import { contactsOf, travelToContact } from '../../job/grip/geometry.ts'
import type { GripLoad } from '../../job/grip/load.ts'
import { inSeries, jawStiffness, type Springs, springsAt } from '../../job/grip/statics.ts'
import type { Scenario } from '../../scenario/index.ts'
import { axisPlant, type PlantModel, type PlantState, type Weights } from '../axis-plant.ts'
import type { Contact, JobLoops, WorkBound, WorkingPoint, WorkingPointId } from './job.ts'

/** One contact, linear about its working force: pad and half the part in series, tangent there, by Hunt and Crossley's damping. */
export interface GripContact extends Contact {
  /** The half part alone and the pad alone [N/m]. */
  part: number
  pad: number
}

const POINTS: readonly WorkingPointId[] = ['free', 'softest', 'nominal', 'stiffest']

const LABELS: Partial<Record<WorkingPointId, string>> = {
  free: 'Free air',
  softest: 'Softest part',
  nominal: 'Nominal part',
  stiffest: 'Stiffest part',
  relaxed: 'Stiffest part, relaxed',
}

/** Share of the working force by which it may swing on a straight law, and on one that is curved. */
const ROOM = { straight: 0.4, curved: 0.2 }

export const gripLoops: JobLoops<GripLoad> = {
  /** All that tell a difference: under a proportional law a relaxed part is as stiff as a fresh one. */
  points: ({ part }) =>
    part.relaxation.fraction > 0 && !lawOf(part.exponent).proportional() ? [...POINTS, 'relaxed'] : POINTS,
  stiffened: (scenario, factor) => ({
    ...scenario,
    part: { ...scenario.part, stiffness: scenario.part.stiffness * factor },
  }),
  point: gripPoint,
  plant: gripPlant,
  limit({ part }, { force }) {
    if (part.crackForce !== undefined && force >= part.crackForce) return { kind: 'cracks', force: part.crackForce }
    const yields = part.yieldForce !== undefined && force >= part.yieldForce
    return yields ? { kind: 'yields', force: part.yieldForce! } : null
  },
  pull: (scenario, { force }) => contactsOf(scenario) * force,
  setDown(load, scenario, { travel, contact }) {
    load.liftTime = Number.POSITIVE_INFINITY
    // Against an anvil the part sinks into the far contact as deep as the jaw into the near one.
    load.state.shift = contact && contactsOf(scenario) === 1 ? (travel - travelToContact(scenario)) / 2 : 0
  },
  met(load, { contact }) {
    const lifts = contact && (load.state.nearForce === 0 || load.state.farForce === 0)
    const breaks = load.near.state.dent > 0 || load.far.state.dent > 0 || load.state.crackTime > 0
    const bounds: WorkBound[] = lifts ? ['contact'] : []
    return breaks ? [...bounds, 'part'] : bounds
  },
  calm: (scenario) => scenario,
}

function gripPoint(scenario: Scenario, id: WorkingPointId, force: number): Omit<WorkingPoint, 'id' | 'factor'> {
  const label = LABELS[id]!
  const travel = travelToContact(scenario)
  if (id === 'free') return { label, force: 0, travel: travel / 2, speed: 0, room: 0, contact: null }
  // A relaxed part bears the force with what has not faded: it is flattened as a fresh one by so much more force.
  const elastic = id === 'relaxed' ? force / (1 - scenario.part.relaxation.fraction) : force
  const springs = springsAt(scenario, force, elastic)
  // Against an anvil the jaw also follows the part, which sinks into the far contact.
  const sunk = contactsOf(scenario) === 2 ? 0 : springs.squeeze
  return {
    label,
    force,
    travel: travel + springs.squeeze + sunk,
    speed: 0,
    room: ROOM[scenario.part.exponent === 1 ? 'straight' : 'curved'] * force,
    contact: contactAt(scenario, springs, force),
  }
}

/** The tangent of F = K·f(2s)·(1 + 2λ·ṡ), s the squeeze of the half part, with the pad in series, at `force` [N]. */
function contactAt(scenario: Scenario, { part, pad, stiffness }: Springs, force: number): GripContact {
  const { damping, relaxation } = scenario.part
  return {
    stiffness,
    damping: (2 * damping * force * pad) / (part + pad),
    part,
    pad,
    slow: inSeries(part * (1 - relaxation.fraction), pad),
    against: jawStiffness(scenario, { stiffness }),
  }
}

function gripPlant(scenario: Scenario, point: WorkingPoint): PlantModel {
  const { actuator, part } = scenario
  const contact = point.contact as GripContact | null
  const { fraction, time } = part.relaxation
  const mirrored = contactsOf(scenario) === 2
  const names = namesOf(contact, mirrored, fraction > 0)
  const { model, add } = axisPlant(actuator, gripOutput(scenario), point.travel, names)
  const { jawMass } = model
  if (!contact) return model
  const near = contactForce(contact, fraction, mirrored ? { jaw: 1 } : { jaw: 1, part: -1 }, 'fade')
  add('jawSpeed', near, -(mirrored ? 2 : 1) / jawMass)
  if (fraction > 0)
    add('fade', fading(contact, fraction, mirrored ? { jaw: 1 } : { jaw: 1, part: -1 }, 'fade'), 1 / time)
  if (mirrored) return { ...model, nearForce: near }
  const far = contactForce(contact, fraction, { part: 1 }, 'farFade')
  add('part', { partSpeed: 1 })
  add('partSpeed', near, 1 / part.mass)
  add('partSpeed', far, -1 / part.mass)
  if (fraction > 0) add('farFade', fading(contact, fraction, { part: 1 }, 'farFade'), 1 / time)
  return { ...model, nearForce: near }
}

/**
 * Against two driven jaws the part stays in the middle: its own swing changes one force as much as the other and the drive sees
 * nothing of it. Against an anvil it moves.
 */
function namesOf(contact: Contact | null, mirrored: boolean, fades: boolean): PlantState[] {
  const names: PlantState[] = []
  if (!contact) return names
  if (fades) names.push('fade')
  if (!mirrored) names.push('part', 'partSpeed')
  if (!mirrored && fades) names.push('farFade')
  return names
}

const RATES = { jaw: 'jawSpeed', part: 'partSpeed' } as const

/** F = k·(s − φ·d) + c·ṡ: k and c of the contact, squeeze s, d the share of the squeeze that has relaxed. */
function contactForce(contact: Contact, fraction: number, squeeze: Weights, fade: PlantState): Weights {
  const force: Weights = fraction > 0 ? { [fade]: -contact.stiffness * fraction } : {}
  for (const name of ['jaw', 'part'] as const) {
    const weight = squeeze[name] ?? 0
    if (weight === 0) continue
    force[name] = contact.stiffness * weight
    force[RATES[name]] = contact.damping * weight
  }
  return force
}

/** τ·ḋ = s_p − d with the half part's own squeeze s_p = (k_pad·s + φ·k_part·d)/(k_pad + k_part): the Maxwell branch in series with the pad. */
function fading({ part, pad }: GripContact, fraction: number, squeeze: Weights, fade: PlantState): Weights {
  const own: Weights = { [fade]: (fraction * part) / (pad + part) - 1 }
  for (const name of ['jaw', 'part'] as const) {
    const weight = squeeze[name] ?? 0
    if (weight !== 0) own[name] = (pad * weight) / (pad + part)
  }
  return own
}
