/** A web that a roll pulls from a line: span, line, roll, how the drive follows, and what the tension is held against. */
import { type Scenario, startInertia, timeConstant, topSpeed, webIn, webStiffness } from '../../../../sim/index.ts'
import { type Section, say, tex } from '../section.ts'

const finite = (value: number) => (Number.isFinite(value) ? value : null)

const entryStrain = (scenario: Scenario) => webIn(scenario).span.entryTension / webStiffness(scenario)

/** Symbols of the first section hold throughout. */
export const WEB: Section[] = [
  {
    id: 'web-span',
    title: 'The span',
    blocks: [
      say`All quantities are in SI units. Between the line and the roll hangs web that would be shorter than the span by $u$ without any pull; below 0 it hangs slack by so much and carries nothing. Its tension is that of an elastic strip that also answers the speed of its stretching:`,
      tex`T = E\,w\,h\,\max\left(0,\; \frac{u}{L - u} + τ_w\,\frac{\dot u}{L}\right)\quad\text{for}\quad u > 0,\qquad T = 0\quad\text{else}`,
      say`At the start it hangs slack by $s_0$. The line hands web out at the speed $v_l$, already stretched by the tension $T_1$ before it; the rim of the roll takes it up at $v_r$. What counts is its length without pull, which nothing can make or lose:`,
      tex`\dot u = v_r\left(1 - \frac{\max(0,\; u)}{L}\right) - \frac{v_l}{1 + ε_1},\qquad ε_1 = \frac{T_1}{E\,w\,h}`,
      say`For small stretch that is $L\,\dot T = E\,w\,h\,(v_r - v_l) + T_1\,v_l - T\,v_r$: a running span follows a change of speed within the time that the line takes for its length, and at standstill it is a spring. Above $T_b$ the web tears across and carries nothing from then on. Changes of the span’s length by rolls that are out of round, and its slip on rolls, are left out; so are spans before the line, whose tension is given.`,
    ],
    quantities: [
      'web.width',
      'web.thickness',
      'web.modulus',
      'web.damping',
      'web.slack',
      'web.breakTension',
      'span.length',
      'span.entryTension',
    ],
    own: [
      { symbol: 'T', title: 'Tension at the gauge roll', unit: 'N' },
      { symbol: 'u', title: 'Span less web without pull', unit: 'm', shown: 'mm' },
      { symbol: 'v_l', title: 'Speed of the web at the line', unit: 'm/s' },
      { symbol: 'v_r', title: 'Speed of the rim', unit: 'm/s' },
      { symbol: 'ε_1', title: 'Strain with which the web comes', unit: '', shown: '%', value: entryStrain },
    ],
    fixed: [],
    sources: ['shelton'],
  },
  {
    id: 'web-line',
    title: 'The line',
    blocks: [
      say`From each $t_0$ on the line changes its speed $v$ to $v_1$, with the acceleration $a$ at most and changes of it by the jerk $j$. Its roll, of the radius $r_1$, is out of round by $e_1$; after the way $x$ it hands out`,
      tex`v_l = v\left(1 + \frac{e_1}{r_1}\,\sin\frac{x}{r_1}\right)`,
    ],
    quantities: [
      'line.ramps[0].start',
      'line.ramps[0].speed',
      'line.ramps[0].acceleration',
      'line.ramps[0].jerk',
      'line.radius',
      'line.runout',
    ],
    own: [
      { symbol: 'v', title: 'Speed of the line', unit: 'm/s' },
      { symbol: 'x', title: 'Way of the line', unit: 'm' },
    ],
    fixed: [],
    sources: [],
  },
  {
    id: 'web-roll',
    title: 'The roll and the idlers',
    blocks: [
      say`The axis turns the roll by $φ$. One that winds grows with the length $l$ that it has taken up, and its inertia $J$ with it; one that draws keeps $R_0$ and $J_c$. Idlers of the mass $m_i$ at their rims are sped up along with it:`,
      tex`R^2 = R_0^2 + \frac{h\,l}{π},\qquad J = J_c + \frac{π}{2}\,ρ\,w\,(R^4 - r_c^4) + m_i\,R_0^2`,
      say`Between gauge and roll the idlers drag with $D$. It is the elastic bristle of the axis, of the stiffness $k_i$ and the levels $D_s$ at rest and $D_c$ running, half of the difference gone at the speed $v_i$, with $D_v$ for each m/s on top, and never more than the web can hand on, $|D| \le q\,T$. The roll is out of round by $e$, and feels`,
      tex`J\,\ddot φ = M - (T + D)\,(R + e\,\sin φ),\qquad v_r = \dot φ\,(R + e\,\sin φ)`,
      say`with the torque $M$ of the shaft. What is wound brings its own momentum along, so there is no term for the change of $J$.`,
    ],
    quantities: [
      'roll.radius',
      'roll.coreRadius',
      'roll.inertia',
      'roll.runout',
      'web.density',
      'idlers.mass',
      'idlers.coulomb',
      'idlers.breakaway',
      'idlers.viscous',
      'idlers.slideSpeed',
      'idlers.stiffness',
      'idlers.traction',
    ],
    own: [
      { symbol: 'φ', title: 'Turn of the roll', unit: 'rad' },
      { symbol: 'l', title: 'Length taken up', unit: 'm' },
      { symbol: 'R', title: 'Radius of the roll', unit: 'm', shown: 'mm' },
      { symbol: 'J', title: 'Inertia of the output, at the start', unit: 'kg·m²', value: startInertia },
      { symbol: 'D', title: 'Drag of the idlers', unit: 'N' },
      { symbol: 'M', title: 'Torque of the shaft', unit: 'N·m' },
    ],
    fixed: [],
    sources: ['dupont'],
  },
  {
    id: 'web-follow',
    title: 'Following the line',
    blocks: [
      say`The servo is handed how far the roll is ahead of the line, $φ - φ_l$, so the strategies work as on an axis that starts from rest. The way of the line is reckoned with the radius $R_d$: that of the start, or, where the drive counts the length, the one that it has grown to:`,
      tex`\dot φ_l = \frac{v}{R_d}`,
      say`A running web takes a lasting draw. Of the current clamp $φ_l$ therefore goes on with the roll once that is further ahead than its slack, by the share $γ_v$ of the line’s speed at most, so that the reference stays ahead by $φ_o$ and the loop at its limit; it waits for a roll that lags by more than twice that. With the gauge roll nothing of the kind is needed, as its loop trims the speed. What the line asks for by itself is added to the command $I_s$ of the strategy:`,
      tex`I = I_s\,\frac{R_d}{R_0} + \frac{γ_J\,J_d\,\dot v + γ_b\,b\,v}{K\,R_d}`,
      say`with the inertia $J_d$ of motor and roll as the drive reckons it and the torque $K$ for each ampere, within the current limit of the servo.`,
    ],
    quantities: [
      'follow.overspeed',
      'follow.inertia',
      'follow.losses',
      'roll.radius',
      'approach.overtravel',
      'actuator.transmission.viscous',
    ],
    own: [
      { symbol: 'φ', title: 'Turn of the roll', unit: 'rad' },
      { symbol: 'φ_l', title: 'Way of the line in turns of the roll', unit: 'rad' },
      { symbol: 'v', title: 'Speed of the line', unit: 'm/s' },
      { symbol: 'R_d', title: 'Radius that the drive reckons with', unit: 'm' },
      { symbol: 'J_d', title: 'Inertia that the drive reckons with', unit: 'kg·m²' },
      { symbol: 'I', title: 'Current command', unit: 'A' },
      { symbol: 'I_s', title: 'Command of the strategy', unit: 'A' },
      { symbol: 'K', title: 'Torque for each ampere', unit: 'N·m/A' },
    ],
    fixed: [],
    sources: [],
  },
  {
    id: 'web-window',
    title: 'What a tension is held against',
    blocks: [
      say`From $t_w$ on the tension must not fall below $T_l$ in any step, in front of the idlers or behind them; it must not exceed $T_u$ at any time. The worst decides: torn, stretched, slack, else taut. How fast the tension of a running web follows is told by`,
      tex`τ = \frac{L}{v}`,
      say`with $v$ the highest speed of the line.`,
    ],
    quantities: ['window.least', 'window.most', 'window.from'],
    own: [
      { symbol: 'v', title: 'Highest speed of the line', unit: 'm/s', value: topSpeed },
      {
        symbol: 'τ',
        title: 'Time constant of the span',
        unit: 's',
        value: (scenario) => finite(timeConstant(scenario, topSpeed(scenario))),
      },
    ],
    fixed: [],
    sources: [],
  },
  {
    id: 'web-loops',
    title: 'Linear loops of a web',
    blocks: [
      say`The Loops view works on the same plant, linear about a working point; dry friction of axis and idlers does not count, and the roll is as large as at the start. While the web is slack the roll turns freely. A web that stands is a spring; of one that runs at the highest speed $v$ of the line stretch leaves with the web. With $q$ the share of a length in the span that it has without pull and $ω$ the speed of the roll, about its place:`,
      tex`\dot u = q\,R_0\,ω - \frac{v}{(1 + ε_1)\,q}\,\frac{u}{L},\qquad q = 1 - \frac{u}{L}`,
      say`and the tension follows $u$ as above. The drive counts the angle ahead of the line, so a loop that runs along is the one that stands but for that term. Softest and stiffest web differ from the nominal one by $ε_K$ in $E$.`,
    ],
    quantities: ['roll.radius'],
    own: [
      { symbol: 'v', title: 'Highest speed of the line', unit: 'm/s', value: topSpeed },
      { symbol: 'q', title: 'Share of a length without pull', unit: '' },
      { symbol: 'ω', title: 'Speed of the roll', unit: 'rad/s' },
    ],
    fixed: ['spread'],
    sources: [],
  },
]
