/** What a ram presses: frame, joint, tilt, the way of the bushing, and what it is held against. */
import { fitOf, forceLimit, jointPressure, neededForce, pressIn, type Scenario } from '../../../../sim/index.ts'
import { type Section, say, tex } from '../section.ts'

/** Length of the cone on which the overlap grows [m]. */
function coneLength(scenario: Scenario): number {
  const { interference, chamfer } = pressIn(scenario).bushing
  return Math.max(0, interference) / (2 * Math.tan(chamfer.angle))
}

const inner = (scenario: Scenario) => fitOf(scenario).inside / fitOf(scenario).joint
const outer = (scenario: Scenario) => fitOf(scenario).joint / fitOf(scenario).outside

const finite = (value: number) => (Number.isFinite(value) ? value : null)

/** Symbols of the first section hold throughout. */
export const PRESS_FRAME: Section = {
  id: 'press-frame',
  title: 'Ram, frame and bushing',
  blocks: [
    say`All quantities are in SI units. The travel $x$ of the ram is zero at its start and grows as it presses; the depth $h$ of the bushing is zero where its chamfer first touches the bore, after the way $x_g$. Ram and frame give by their stiffness $k_f$ with the damper $d_f$ beside it, and cannot pull:`,
    tex`F = \max\left(0,\; k_f\,(x - x_g - h) + d_f\,(\dot x - \dot h)\right)`,
    say`So the ram reads deeper than the bushing is by $F/k_f$. The ram, of mass $m_r$, moves with the axis as a jaw does, up to the end of its stroke $s_r$; the bushing, with the punch before it of mass $m_b$, moves against the force $F_j$ of the joint and that of the shoulder $F_s$:`,
    tex`m_b\,\ddot h = F - F_j - F_s`,
    say`The shoulder at $h_s$ is a spring $k_s$ with a damper beside it, and cannot pull either; the mouth of the bore stops a bushing in the same way that its cone pushes back out:`,
    tex`F_s = \max\left(0,\; k_s\,(h - h_s) + \sqrt{k_s\,m_b}\,\dot h\right)\quad\text{for}\quad h > h_s`,
    say`Approach and creep zone are profiles of the ram: $v$ and $v_c$ are the speeds, $a$ and $j$ the limits of the profile, $w_c$ is the way before the seat on which the ram creeps, and $x_o$ how far beyond first touch the profile ends.`,
  ],
  quantities: [
    'ram.gap',
    'ram.stiffness',
    'ram.damping',
    'ram.mass',
    'ram.stroke',
    'bushing.mass',
    'bore.shoulder.depth',
    'bore.shoulder.stiffness',
    'approach.speed',
    'approach.creepSpeed',
    'approach.acceleration',
    'approach.jerk',
    'approach.creepFrom',
    'approach.overtravel',
  ],
  own: [
    { symbol: 'x', title: 'Travel of the ram', unit: 'm' },
    { symbol: 'h', title: 'Depth of the bushing', unit: 'm' },
    { symbol: 'F', title: 'Force of the ram', unit: 'N' },
    { symbol: 'F_j', title: 'Force of the joint', unit: 'N' },
    { symbol: 'F_s', title: 'Force of the shoulder', unit: 'N' },
  ],
  fixed: [],
  sources: [],
}

export const PRESS: Section[] = [
  PRESS_FRAME,
  {
    id: 'press-fit',
    title: 'Pressure of the joint',
    blocks: [
      say`Bushing and wall are thick-walled rings; both give until their overlap is half of the interference $U$ on either side. With the ratios of diameters $Q_b = d_i/d$ and $Q_h = d/D$ the pressure is`,
      tex`p = \frac{U}{d\,(K_b + K_h)},\qquad K_b = \frac{1}{E_b}\left(\frac{1 + Q_b^2}{1 - Q_b^2} - ν_b\right),\qquad K_h = \frac{1}{E_h}\left(\frac{1 + Q_h^2}{1 - Q_h^2} + ν_h\right)`,
      say`The wall of the bore is stretched at the joint by the hoop stress $σ_t$, and begins to flow at the pressure $p_F$:`,
      tex`σ_t = p\,\frac{1 + Q_h^2}{1 - Q_h^2},\qquad p_F = \frac{1 - Q_h^2}{\sqrt{3}}\,R_e`,
      say`Beyond $p_F$ the true pressure is lower than the one stated; the bench says by how much it is exceeded and goes on with the elastic one.`,
    ],
    quantities: [
      'bushing.interference',
      'bushing.diameter',
      'bushing.innerDiameter',
      'bushing.modulus',
      'bushing.poisson',
      'bore.outerDiameter',
      'bore.modulus',
      'bore.poisson',
      'bore.yieldStress',
    ],
    own: [
      { symbol: 'p', title: 'Pressure of the joint', unit: 'Pa', shown: 'MPa', value: jointPressure },
      { symbol: 'p_F', title: 'Pressure at which the wall flows', unit: 'Pa' },
      { symbol: 'σ_t', title: 'Hoop stress of the wall', unit: 'Pa' },
      { symbol: 'K_b', title: 'Give of the bushing', unit: '1/Pa' },
      { symbol: 'K_h', title: 'Give of the wall', unit: '1/Pa' },
      { symbol: 'Q_b', title: 'Ratio of diameters of the bushing', unit: '', value: inner },
      { symbol: 'Q_h', title: 'Ratio of diameters of the wall', unit: '', value: outer },
    ],
    fixed: [],
    sources: ['lame', 'din7190'],
  },
  {
    id: 'press-force',
    title: 'Force over depth',
    blocks: [
      say`On the leading cone the overlap grows from nothing to the whole within the length $l_e$; behind it the length $e$ is engaged:`,
      tex`l_e = \frac{U}{2\,\tan θ_c},\qquad s = \min\left(1,\; \frac{h}{l_e}\right),\qquad e = \max\left(0,\; \min(h - l_e,\; l)\right)`,
      say`The chamfer has to be long enough for that, $l_c \ge l_e$. Normal forces of cone and joint follow from pressure and face:`,
      tex`N_e = \frac{s^2}{2}\,l_e\,π\,d\,p,\qquad N = e\,π\,d\,p + N_ψ`,
      say`A cone pushed in is a wedge with friction. A ram that hardly moves slides the bushing on with`,
      tex`F_j = \frac{\tan θ_c + µ_p}{1 - µ_p\,\tan θ_c}\,N_e + µ_p\,N`,
      say`Friction itself is the elastic bristle of the axis, of the stiffness $k_j$, whose level grows with what is engaged; at rest it bears up to $µ_r$ in place of $µ_p$, and half of that difference is gone at the speed $v_j$. So a joint whose friction at rest is high, on a frame that is soft and a ram that is slow, sticks and slips.`,
      say`A bushing that is held askew by $ψ$ overlaps more at one end and less at the other. With $δ = U/2$ and the overlap $o = ψ\,e/2$ that the tilt adds at an end, nothing changes as long as $o \le |δ|$; once the ends lift off the wall the rest presses the harder:`,
      tex`N_ψ = \left(\frac{(δ + o)^2}{4\,o} - \max(0,\; δ)\right)\frac{2}{d\,(K_b + K_h)}\,e\,π\,d`,
    ],
    quantities: [
      'bushing.interference',
      'bushing.diameter',
      'bushing.length',
      'bushing.chamfer.angle',
      'bushing.chamfer.length',
      'bushing.tilt',
      'joint.friction.pressing',
      'joint.friction.static',
      'joint.slideSpeed',
      'joint.stiffness',
    ],
    own: [
      { symbol: 'p', title: 'Pressure of the joint', unit: 'Pa', shown: 'MPa', value: jointPressure },
      { symbol: 'l_e', title: 'Length on which the overlap grows', unit: 'm', shown: 'mm', value: coneLength },
      { symbol: 's', title: 'Share of the whole overlap on the cone', unit: '' },
      { symbol: 'e', title: 'Length that is engaged', unit: 'm' },
      {
        symbol: 'δ',
        title: 'Overlap on one side',
        unit: 'm',
        shown: 'µm',
        value: (s) => pressIn(s).bushing.interference / 2,
      },
      { symbol: 'K_b', title: 'Give of the bushing', unit: '1/Pa' },
      { symbol: 'K_h', title: 'Give of the wall', unit: '1/Pa' },
      { symbol: 'o', title: 'Overlap that the tilt adds at an end', unit: 'm' },
      { symbol: 'N_e', title: 'Normal force on the cone', unit: 'N' },
      { symbol: 'N', title: 'Normal force of the joint', unit: 'N' },
      { symbol: 'N_ψ', title: 'Of it, by the tilt', unit: 'N' },
    ],
    fixed: [],
    sources: ['din7190', 'dupont'],
  },
  {
    id: 'press-window',
    title: 'What a joint is held against',
    blocks: [
      say`Wherever the bushing gets deeper than before, the force has to lie in the band from $F_l$ to $F_u$, which run straight between the points given over the depth $h$; this is checked in every step. It must never go over the lesser of the two limits $F_most$ and $F_b$. In the end the depth has to lie from $h_l$ to $h_u$, and the highest force since the shoulder was met from $S_l$ to $S_u$. A bushing that has not stood for the settled window as the run ends, and that no shoulder stops, is not seated.`,
      say`Above the band for its tilt alone, $F - µ_p\,N_ψ \le F_u$, it is tilted; above it for any other reason, forced; below it, slack. The least force of the ram that meets the window at the end of the way is`,
      tex`F_w = \max\left(F_j,\; S_l\right)`,
      say`with $F_j$ that of the slow slide there. To push the bushing out again takes friction at rest over the whole length that is engaged, the cone left out: $F_o = µ_r\,N$.`,
    ],
    quantities: [
      'window.band[0].depth',
      'window.band[0].least',
      'window.band[0].most',
      'window.mostForce',
      'bushing.mostForce',
      'window.depth.least',
      'window.depth.most',
      'window.seat.least',
      'window.seat.most',
      'joint.friction.pressing',
      'joint.friction.static',
    ],
    own: [
      { symbol: 'F_w', title: 'Force needed at the end of the way', unit: 'N', value: neededForce },
      { symbol: 'F_o', title: 'Force that pushes it out', unit: 'N' },
      { symbol: 'N', title: 'Normal force of the joint', unit: 'N' },
      { symbol: 'N_ψ', title: 'Of it, by the tilt', unit: 'N' },
      { symbol: '', title: 'Least of the two force limits', unit: 'N', value: (s) => finite(forceLimit(s)) },
    ],
    fixed: [],
    sources: [],
  },
  {
    id: 'press-loops',
    title: 'Linear loops of a press',
    blocks: [
      say`The Loops view works on the same plant, linear about a working point; of the friction of the axis only the viscous part counts. Before the bore the ram moves freely. Where the bushing stands, its friction holds it by bristles of the stiffness $k_j$ that are elastic: half way in the joint by themselves, on the shoulder beside $k_s$. The frame lies in series with what the bushing meets:`,
      tex`k_1 = k_j + k_s,\qquad \frac{\dd F}{\dd x} = \frac{k_f\,k_1}{k_f + k_1}`,
      say`That holds as long as the force swings by no more than the bristles bear elastically. Where the bushing slides, half way in, $k_1$ is the slope of the joint’s force over the way; the force $y$ of the bristles follows its level $R$, which Stribeck’s curve lowers with the speed, as they give way by the share $g$ of the motion:`,
      tex`\dot y = k_j\,\left(1 - g\,\frac{y}{R}\right)\,\dot h`,
      say`Softest and stiffest differ from the nominal one by $ε_K$ in $k_f$, $k_s$ and $k_j$ alike.`,
    ],
    quantities: ['joint.stiffness'],
    own: [
      { symbol: 'k_1', title: 'Stiffness that the bushing meets', unit: 'N/m' },
      { symbol: 'y', title: 'Force of the bristles', unit: 'N' },
      { symbol: 'R', title: 'Level of the friction', unit: 'N' },
      { symbol: 'g', title: 'Share of the motion by which bristles give way', unit: '' },
    ],
    fixed: ['spread'],
    sources: [],
  },
]
