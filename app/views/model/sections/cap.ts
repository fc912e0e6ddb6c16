/** What a head turns on: chuck, thread, liner, stripping and misstart, and what a closure is held against. */
import { axisOf, capIn, type Scenario } from '../../../../sim/index.ts'
import { type Section, say, tex } from '../section.ts'

const slope = (scenario: Scenario) => {
  const { lead, meanDiameter } = capIn(scenario).closure
  return Math.atan(lead / (Math.PI * meanDiameter))
}

const frictionAngle = (scenario: Scenario) => {
  const { threadFriction, flankAngle } = capIn(scenario).closure
  return Math.atan(threadFriction / Math.cos(flankAngle))
}

/** Symbols of the first section hold throughout. */
const CAP_FRAME: Section = {
  id: 'cap-frame',
  title: 'Head, chuck and closure',
  blocks: [
    say`All quantities are in SI units, angles in radians. The angle $θ$ of the head is zero where it sets out and grows as it turns on; so does the angle $φ$ of the closure. The chuck, of inertia $J_h$, turns with the spindle; it gives by its stiffness $k_h$ with the damper $d_h$ beside it, both ways, for as long as it holds on:`,
    tex`T = k_h\,(θ - φ) + d_h\,(\dot θ - \dot φ)`,
    say`The closure, of inertia $J_k$, turns against the torque $T_g$ of its thread:`,
    tex`J_k\,\ddot φ = T - T_g`,
    say`Until the threads find each other at $φ_s$ nothing resists; from there on the closure goes down by $z$, and the head has to follow it. It presses the closure down with $N$, of which its spring takes $k_n$ away for each way down, and with nothing once the chuck has let go:`,
    tex`z = \frac{l}{2\,π}\,(φ - φ_s),\qquad N = \max\left(0,\; N_t - k_n\,z\right)`,
    say`Approach and creep zone are profiles of the head: $ω$ and $ω_c$ are the speeds, $ε$ and $j$ the limits of the profile, $φ_w$ is the angle before the nominal liner on which the head creeps, and $φ_o$ how far beyond it the profile ends.`,
  ],
  quantities: [
    'chuck.inertia',
    'chuck.stiffness',
    'chuck.damping',
    'chuck.startAngle',
    'chuck.topLoad',
    'chuck.topRate',
    'closure.inertia',
    'closure.lead',
    'approach.speed',
    'approach.creepSpeed',
    'approach.acceleration',
    'approach.jerk',
    'approach.creepFrom',
    'approach.overtravel',
  ],
  own: [
    { symbol: 'θ', title: 'Angle of the head', unit: 'rad' },
    { symbol: 'φ', title: 'Angle of the closure', unit: 'rad' },
    { symbol: 'T', title: 'Torque of the chuck', unit: 'N·m' },
    { symbol: 'T_g', title: 'Torque of the thread', unit: 'N·m' },
    { symbol: 'z', title: 'Way down', unit: 'm' },
    { symbol: 'N', title: 'Top load', unit: 'N' },
  ],
  fixed: [],
  sources: [],
}

export const CAP: Section[] = [
  CAP_FRAME,
  {
    id: 'cap-spindle',
    title: 'Motor and gear of a spindle',
    blocks: [
      say`A motor alone, $i = 1$ and $η = 1$, or one behind a gear. Seen from the spindle the rotor counts by the square of the ratio, its torque by the ratio itself:`,
      tex`M = i^2\,J + J_s,\qquad K = i\,K_t`,
      say`The gear loses the share $1/η - 1$ of the load that it carries, in both directions, so that what turns it back has $2 - 1/η$ left and nothing below one half. Friction, play, stiffness, cogging, winding and heat are those of an axis that travels, with radians for metres and newton metres for newtons.`,
    ],
    quantities: [
      'actuator.transmission.gearRatio',
      'actuator.transmission.efficiency',
      'actuator.transmission.inertia',
      'actuator.motor.inertia',
      'actuator.motor.torqueConstant',
    ],
    own: [
      {
        symbol: 'M',
        title: 'Inertia of the motor side',
        unit: 'kg·m²',
        shown: 'g·cm²',
        value: ({ actuator }) => axisOf(actuator).mass,
      },
      {
        symbol: 'K',
        title: 'Torque at the spindle for each ampere',
        unit: 'N·m/A',
        value: ({ actuator }) => axisOf(actuator).forcePerAmpere,
      },
    ],
    fixed: [],
    sources: ['niemann'],
  },
  {
    id: 'cap-thread',
    title: 'Torque of a thread',
    blocks: [
      say`The thread is a power screw, the liner on the rim its collar. With the preload $F$ of the liner and the load $X$ of a jam the flanks carry`,
      tex`W = F + X - N`,
      say`Slope and friction are angles, $\tan λ = l/(π\,d_m)$ and $\tan ρ = µ_t/\cos α$. Turning on takes the run-down torque $T_r$, the friction of the liner and the load on the slope; a top load larger than what the flanks carry helps the closure down:`,
      tex`T_g = T_r + µ_c\,r_c\,F + W\,\frac{d_m}{2}\,\tan(ρ + λ)\quad\text{for}\quad W > 0`,
      tex`T_g = T_r + µ_c\,r_c\,F - W\,\frac{d_m}{2}\,\tan(ρ - λ)\quad\text{for}\quad W \le 0`,
      say`Friction itself is the elastic bristle of the axis, of the stiffness $k_k$, with a level of its own in either direction; at rest it bears $κ_r$ times as much, and half of the difference is gone at the speed $ω_k$. A load that fades takes its friction along. So a closure holds its angle when the head stops, where the thread locks itself: $ρ > λ$, or friction of the liner enough. To take it off again, the head gone, takes`,
      tex`T_o = κ_r\left(T_r + F\left(µ_c\,r_c + \frac{d_m}{2}\,\tan(ρ - λ) + \frac{l}{2\,π}\right)\right) - F\,\frac{l}{2\,π}`,
      say`which is a prediction: trade guides find 40 to 80 % of the application torque, and it has to be measured.`,
    ],
    quantities: [
      'closure.meanDiameter',
      'closure.flankAngle',
      'closure.threadFriction',
      'closure.faceRadius',
      'closure.faceFriction',
      'closure.restFriction',
      'closure.runDown',
      'closure.slideSpeed',
      'closure.stiffness',
    ],
    own: [
      { symbol: 'F', title: 'Preload of the liner', unit: 'N' },
      { symbol: 'X', title: 'Load of a jam', unit: 'N' },
      { symbol: 'W', title: 'Load of the flanks', unit: 'N' },
      { symbol: 'λ', title: 'Slope of the thread', unit: 'rad', shown: '°', value: slope },
      { symbol: 'ρ', title: 'Angle of friction', unit: 'rad', shown: '°', value: frictionAngle },
      { symbol: 'T_o', title: 'Removal torque', unit: 'N·m' },
    ],
    fixed: [],
    sources: ['shigley-collar', 'dupont'],
  },
  {
    id: 'cap-liner',
    title: 'Liner, stripping and misstart',
    blocks: [
      say`The liner is met after the angle $φ_e$ on the thread and squeezed by $s$ from there on. The share $φ_r$ of its elastic force creeps away in a Maxwell branch $q$:`,
      tex`s = \frac{l}{2\,π}\,\max\left(0,\; φ - φ_s - φ_e - o\right)`,
      tex`F = \max\left(0,\; (1 - φ_r)\,k_l\,s + q\right),\qquad \dot q = φ_r\,k_l\,\dot s - \frac{q}{τ_r}`,
      say`In the end $F = (1 - φ_r)\,k_l\,s$ is left, from which the removal torque after relaxing is told. A closure that was started askew jams at $φ_x$ on the thread, where its torque climbs by $k_x$; that loads the flanks alone:`,
      tex`X = \frac{2\,k_x}{d_m\,\tan(ρ + λ)}\,\max\left(0,\; φ - φ_s - φ_x\right)`,
      say`Where $T_g$ exceeds $T_x$ the thread rides over: the share $κ_x$ of its load is left, and by every turn on liner and jam give way, which $o$ counts.`,
    ],
    quantities: [
      'closure.engagement',
      'closure.meanDiameter',
      'closure.stripTorque',
      'closure.stripShare',
      'closure.misstart.after',
      'closure.misstart.stiffness',
      'liner.stiffness',
      'liner.relaxing',
      'liner.relaxationTime',
    ],
    own: [
      { symbol: 's', title: 'Squeeze of the liner', unit: 'm' },
      { symbol: 'F', title: 'Preload of the liner', unit: 'N' },
      { symbol: 'q', title: 'Force of the part that creeps', unit: 'N' },
      { symbol: 'X', title: 'Load of a jam', unit: 'N' },
      { symbol: 'o', title: 'Angle by which it has overrun', unit: 'rad' },
      { symbol: 'λ', title: 'Slope of the thread', unit: 'rad', shown: '°', value: slope },
      { symbol: 'ρ', title: 'Angle of friction', unit: 'rad', shown: '°', value: frictionAngle },
    ],
    fixed: [],
    sources: [],
  },
  {
    id: 'cap-window',
    title: 'What a closure is held against',
    blocks: [
      say`The application torque $T_a$ is the highest $T_g$ of the run, what a torque meter that holds the jar would show. It has to lie from $T_l$ to $T_u$, and must not be there before the angle $n_l$ on the thread: a closure that reaches $T_l$ sooner, or meets the jam of a misstart, is cross-threaded. One that has ridden over is stripped, whatever else became of it; one that still turns on in the settled window before the end of the run is loose.`,
    ],
    quantities: ['window.torque.least', 'window.torque.most', 'window.leastTurns'],
    own: [{ symbol: 'T_a', title: 'Application torque', unit: 'N·m' }],
    fixed: [],
    sources: [],
  },
  {
    id: 'cap-loops',
    title: 'Linear loops of a closure',
    blocks: [
      say`The Loops view works on the same plant, linear about a working point; dry friction of the axis and of the free thread does not count. On the way the closure hangs in its chuck alone. Where it stands on the liner, its friction holds it by bristles of the stiffness $k_k$ that are elastic, and through the lead liner and top load turn it back; the chuck lies in series with that:`,
      tex`c = \frac{l}{2\,π},\qquad k_2 = k_k + c^2\,(k_l + k_n),\qquad \frac{\dd T}{\dd θ} = \frac{k_h\,k_2}{k_h + k_2}`,
      say`That holds as long as the torque swings by no more than the bristles bear elastically. Where the closure turns on, friction of thread and liner grows with the preload, by $b$ for each newton, and beside the top load`,
      tex`k_2 = c\,k_l\,(c + b)`,
      say`its bristles following their level with a lag, as those of a joint do. Of the liner the share $φ_r$ creeps away, so that slow changes meet less; as its spring is straight, one that has crept answers as a fresh one. Softest and stiffest differ from the nominal one by $ε_K$ in $k_l$, $k_h$ and $k_k$ alike.`,
    ],
    quantities: ['closure.stiffness', 'liner.stiffness', 'liner.relaxing'],
    own: [
      { symbol: 'c', title: 'Way down for each radian', unit: 'm/rad' },
      { symbol: 'k_2', title: 'Stiffness that the closure meets', unit: 'N·m/rad' },
      { symbol: 'b', title: 'Friction torque for each newton', unit: 'm' },
    ],
    fixed: ['spread'],
    sources: [],
  },
]
