/** Gains of the position and the velocity loop, on the reflected mass. */
import type { Edit, Scenario } from '../../scenario/index.ts'
import { axisFigures, outputFigures } from './axis-figures.ts'
import { type Figure, type GainDesign, type Shortfall, tidy, type Wanted } from './design.ts'
import {
  type ParallelPid,
  parallelPi,
  parallelPid,
  placePosition,
  placeVelocity,
  simcDoubleIntegrating,
  simcIntegrating,
  symmetricOptimum,
} from './rules.ts'

const LEONHARD = 'Kessler, Regelungstechnik 6, 1958; Leonhard, Control of Electrical Drives, 3rd ed. (both from memory)'
const SKOGESTAD = 'Skogestad, J. Process Control 13 (2003) 291–309, table 1'
const PLACEMENT = 'Pole placement, as in Åström and Hägglund, PID Controllers, 2nd ed., ch. 4 (from memory)'

const positionEdits = ({ kp, ki, kd }: ParallelPid): Edit[] => [
  { path: 'servo.kp', value: tidy(kp) },
  { path: 'servo.ki', value: tidy(ki) },
  { path: 'servo.kd', value: tidy(Math.max(0, kd)) },
]

const VELOCITY = 'strategies.sensedForce.velocity'
const velocityEdits = ({ kp, ki }: { kp: number; ki: number }): Edit[] => [
  { path: `${VELOCITY}.kp`, value: tidy(Math.max(0, kp)) },
  { path: `${VELOCITY}.ki`, value: tidy(ki) },
]

/** SIMC with τ = 0 is its fastest. */
const tooFast = (wanted: number | undefined, delay: number): Shortfall | null =>
  wanted !== undefined && wanted * delay > 1 ? { kind: 'too fast', wanted, fastest: 1 / delay } : null

const overdamped = (gain: number): Shortfall | null => (gain < 0 ? { kind: 'friction' } : null)

function inputs(scenario: Scenario, more: Figure[]): Figure[] {
  const { mass, plant } = axisFigures(scenario)
  const of = outputFigures(scenario)
  return [
    { label: of.mass[0], value: mass, unit: of.mass[1] },
    { label: of.force[0], value: plant.forceConstant, unit: of.force[1] },
    ...more,
  ]
}

/** A wanted bandwidth that leaves about 50° of phase: a triple pole crosses at 3.05 ω, of which ω·θ = 1/8 takes 22° from 71°. */
export function positionDesigns(scenario: Scenario, wanted: Wanted): GainDesign[] {
  const { acceleration, drag, delay } = axisFigures(scenario)
  const omega = wanted.bandwidth ?? 1 / (8 * delay)
  const zeta = wanted.damping ?? 1
  const closed = wanted.bandwidth ? Math.max(0, 1 / wanted.bandwidth - delay) : delay
  const inner = parallelPi(symmetricOptimum(acceleration, delay))
  const outer = 1 / (8 * delay)
  const placed = placePosition(acceleration, drag, omega, zeta)
  const lag: Figure = { label: 'Sum of lags θ', value: delay, unit: 's' }
  return [
    {
      loop: 'position',
      method: 'bandwidth-damping',
      label: 'Bandwidth and damping',
      formula: 'k_p = M·ω²(1 + 2ζ)/K, k_i = M·ω³/K, k_d = (M·ω(1 + 2ζ) − b)/K: poles (s + ω)(s² + 2ζω·s + ω²)',
      source: PLACEMENT,
      figures: inputs(scenario, [
        { label: 'Wanted bandwidth ω', value: omega, unit: 'rad/s' },
        { label: 'Wanted damping ζ', value: zeta, unit: '' },
      ]),
      edits: positionEdits(placed),
      note: '',
      short: overdamped(placed.kd),
    },
    {
      loop: 'position',
      method: 'symmetric-optimum',
      label: 'Symmetric optimum',
      formula:
        'Speed: K_v = M/(2Kθ), T = 4θ; position over it: K_x = 1/(8θ). As one PID: k_d = K_v, k_p = K_v·K_x + K_v/T, k_i = K_v·K_x/T',
      source: LEONHARD,
      figures: inputs(scenario, [lag]),
      edits: positionEdits({ kp: inner.kp * outer + inner.ki, ki: inner.ki * outer, kd: inner.kp }),
      note: '',
      short: null,
    },
    {
      loop: 'position',
      method: 'simc',
      label: 'SIMC, double integrator',
      formula:
        'K_c = M/(4K(τ + θ)²), τ_I = τ_D = 4(τ + θ); as a parallel PID k_p = 2K_c, k_i = K_c/τ_I, k_d = K_c·τ_D; τ = θ unless a bandwidth 1/(τ + θ) is wanted',
      source: SKOGESTAD,
      figures: inputs(scenario, [lag, { label: 'Closed-loop time τ', value: closed, unit: 's' }]),
      edits: positionEdits(parallelPid(simcDoubleIntegrating(acceleration, delay, closed))),
      note: '',
      short: tooFast(wanted.bandwidth, delay),
    },
  ]
}

/** The default bandwidth leaves about 50° of phase: with ζ = 1 the loop crosses at 2.06 ω, of which ω·θ = 1/5 takes 24° from 76°. */
export function velocityDesigns(scenario: Scenario, wanted: Wanted): GainDesign[] {
  const { acceleration, drag, delay } = axisFigures(scenario)
  const omega = wanted.bandwidth ?? 1 / (5 * delay)
  const zeta = wanted.damping ?? 1
  const closed = wanted.bandwidth ? Math.max(0, 1 / wanted.bandwidth - delay) : delay
  const placed = placeVelocity(acceleration, drag, omega, zeta)
  const lag: Figure = { label: 'Sum of lags θ', value: delay, unit: 's' }
  return [
    {
      loop: 'velocity',
      method: 'bandwidth-damping',
      label: 'Bandwidth and damping',
      formula: 'k_p = (2ζω·M − b)/K, k_i = M·ω²/K: poles s² + 2ζω·s + ω²',
      source: PLACEMENT,
      figures: inputs(scenario, [
        { label: 'Wanted bandwidth ω', value: omega, unit: 'rad/s' },
        { label: 'Wanted damping ζ', value: zeta, unit: '' },
      ]),
      edits: velocityEdits(placed),
      note: '',
      short: overdamped(placed.kp),
    },
    {
      loop: 'velocity',
      method: 'symmetric-optimum',
      label: 'Symmetric optimum',
      formula: 'k_p = M/(2Kθ), k_i = k_p/(4θ): phase margin 36.9° for a lag θ',
      source: LEONHARD,
      figures: inputs(scenario, [lag]),
      edits: velocityEdits(parallelPi(symmetricOptimum(acceleration, delay))),
      note: '',
      short: null,
    },
    {
      loop: 'velocity',
      method: 'simc',
      label: 'SIMC, integrator',
      formula: 'k_p = M/(K(τ + θ)), k_i = k_p/(4(τ + θ)); τ = θ unless a bandwidth 1/(τ + θ) is wanted',
      source: SKOGESTAD,
      figures: inputs(scenario, [lag, { label: 'Closed-loop time τ', value: closed, unit: 's' }]),
      edits: velocityEdits(parallelPi(simcIntegrating(acceleration, delay, closed))),
      note: '',
      short: tooFast(wanted.bandwidth, delay),
    },
  ]
}
