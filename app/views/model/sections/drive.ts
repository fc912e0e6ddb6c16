/** Blocks of the drive, and the strategies. */
import { axisOf, contactsOf, type Scenario } from '../../../../sim/index.ts'
import { type OwnSymbol, type Section, say, tex } from '../section.ts'

const perSecond = (rate: (scenario: Scenario) => number) => (scenario: Scenario) => 1 / rate(scenario)

const INTEGRAL = (unit: string): OwnSymbol => ({ symbol: 'S', title: 'Integral', unit })
const SERVO_PERIOD: OwnSymbol = {
  symbol: 'T_s',
  title: 'Period of the servo',
  unit: 's',
  shown: 'ms',
  value: perSecond(({ servo }) => servo.rate),
}
const SPEED: OwnSymbol = { symbol: 'v_m', title: 'Measured speed', unit: 'm/s' }
const COMMAND: OwnSymbol = { symbol: 'i*', title: 'Current command', unit: 'A' }

export const BLOCKS: Section[] = [
  {
    id: 'current-loop',
    title: 'Current loop',
    blocks: [
      say`PI with back-EMF feed-forward; its zero lies on the pole of the cold winding. The integral follows the trapezoidal rule:`,
      tex`u^* = \left(k_p + \frac{k_i\,T_i}{2}\right)(i^* - i_m) + S + γ\,K_m\,v_m`,
      tex`S' = S + k_i\,T_i\,(i^* - i_m)`,
      tex`k_p = L\,ω_i,\qquad k_i = R\,ω_i`,
      say`$u^*$ is limited to $\pm U$ and acts one period $T_i = 1/f_i$ later. The integral rests while the output is limited and the error would drive it further; so it does in every block below.`,
    ],
    quantities: [
      'drive.currentRate',
      'drive.currentBandwidth',
      'drive.backEmfFeedforward',
      'drive.busVoltage',
      'actuator.motor.resistance',
      'actuator.motor.inductance',
    ],
    own: [
      { symbol: 'u*', title: 'Voltage of the next period', unit: 'V' },
      COMMAND,
      { symbol: 'i_m', title: 'Measured current', unit: 'A' },
      INTEGRAL('V'),
      SPEED,
      {
        symbol: 'k_p',
        title: 'Proportional gain',
        unit: 'V/A',
        value: ({ actuator, drive }) => actuator.motor.inductance * drive.currentBandwidth,
      },
      {
        symbol: 'k_i',
        title: 'Integral gain',
        unit: 'V/(A·s)',
        value: ({ actuator, drive }) => actuator.motor.resistance * drive.currentBandwidth,
      },
      {
        symbol: 'K_m',
        title: 'Motor force at the jaw, cold',
        unit: 'N/A',
        value: ({ actuator }) => axisOf(actuator).forcePerAmpere,
      },
      {
        symbol: 'T_i',
        title: 'Period of the current loop',
        unit: 's',
        shown: 'ms',
        value: perSecond(({ drive }) => drive.currentRate),
      },
    ],
    fixed: [],
    sources: ['leonhard'],
  },
  {
    id: 'servo',
    title: 'Servo',
    blocks: [
      say`Position PID on the profile $x^*$, computed at each servo sample without delay. With two degrees of freedom: the proportional part takes the share $b_r$ of the way since the profile set out, the derivative part the share $c_r$ of its speed, less the filtered measured speed:`,
      tex`i^* = k_p\,(b_r\,x^* - x_m) + \frac{k_i\,T_s}{2}\,(x^* - x_m) + S + k_d\,(c_r\,\dot x^* - v_m) + k_v\,\dot x^* + k_a\,\ddot x^*`,
      tex`S' = S + k_i\,T_s\,(x^* - x_m)`,
      tex`v_m' = v_m + \frac{T_s}{T_f + T_s}\left(\frac{x_m' - x_m}{T_s} - v_m\right)`,
      say`$i^*$ is limited to $\pm I_lim$, and $T_s = 1/f_s$. A step motor in open loop has no servo: its field carries the limit as its current and stands at $x^*$.`,
    ],
    quantities: [
      'servo.rate',
      'servo.kp',
      'servo.ki',
      'servo.kd',
      'servo.speedFilter',
      'servo.velocityFeedforward',
      'servo.accelerationFeedforward',
      'servo.setpointWeights.proportional',
      'servo.setpointWeights.derivative',
      'servo.currentLimit',
    ],
    own: [
      { symbol: 'x*', title: 'Profile', unit: 'm' },
      { symbol: 'x_m', title: 'Measured travel', unit: 'm' },
      SPEED,
      COMMAND,
      INTEGRAL('A'),
      SERVO_PERIOD,
    ],
    fixed: [],
    sources: [],
  },
  {
    id: 'profile',
    title: 'Profile of the approach',
    blocks: [
      say`A jerk-limited move from rest to $x_t + x_o$, at most to the stroke. A change of speed by $Δv$ takes`,
      tex`T_v = \begin{cases} \frac{Δv}{a} + \frac{a}{j} & Δv\,j \ge a^2 \\ 2\,\sqrt{Δv/j} & \text{else} \end{cases}`,
      say`and covers the mean of the two speeds times $T_v$. The top speed is $v$, or the highest that the distance allows. From the opening $w_c$ on, where that lies above the width of the part, the jaws move at $v_c$.`,
    ],
    quantities: [
      'approach.speed',
      'approach.acceleration',
      'approach.jerk',
      'approach.creepSpeed',
      'approach.creepFrom',
      'approach.overtravel',
    ],
    own: [
      { symbol: 'x_t', title: 'Travel to first touch', unit: 'm' },
      { symbol: 'Δv', title: 'Change of speed', unit: 'm/s' },
      { symbol: 'T_v', title: 'Time that it takes', unit: 's' },
    ],
    fixed: [],
    sources: ['biagiotti'],
  },
]

export const STRATEGIES: Section[] = [
  {
    id: 'newtons',
    title: 'From newtons to a setting',
    blocks: [
      say`A current means a force where the jaw still creeps on against friction. The winding carries what is set less the offset of the measurement; the magnets of a motor from cold are as warm as the ambient:`,
      tex`K_m\left(1 + α_B\,(T_a - T_ref)\right)(I - I_0) = N_c\,F\,(1 + χ_r) + F_c`,
      say`With the left side as $F_I$, at rest the same current stands for any force between friction against the jaw and friction with it; where $χ_l \ge 1$ there is no upper bound:`,
      tex`\frac{F_I - F_s}{N_c\,(1 + χ_r)} \le F \le \frac{F_I + F_s}{N_c\,(1 - χ_l)}`,
      say`In a duty the lower bound is that of magnets as warm as the set current makes them, all along the run, at the mean copper loss $P_Cu$ over the cycle:`,
      tex`P_Cu = \frac{T}{T_c}\,(I - I_0)^2\,R\left(1 + α_Cu\,(T_w - T_ref)\right)`,
      tex`T_h = T_a + P_Cu\,R_ha,\qquad T_w = T_h + P_Cu\,R_wh`,
    ],
    quantities: [
      'actuator.transmission.coulomb',
      'actuator.transmission.breakaway',
      'actuator.motor.thermal.magnetCoefficient',
      'actuator.motor.thermal.ambient',
      'actuator.motor.thermal.housingResistance',
      'actuator.motor.thermal.windingResistance',
      'actuator.motor.resistance',
      'drive.currentOffset',
      'run.duration',
      'run.cycle',
    ],
    own: [
      { symbol: 'I', title: 'Current that a setting asks for', unit: 'A' },
      { symbol: 'F_I', title: 'Motor force of that current', unit: 'N' },
      { symbol: 'P_Cu', title: 'Mean copper loss', unit: 'W' },
      { symbol: 'T_h', title: 'Temperature of housing and magnets', unit: '°C' },
      { symbol: 'T_w', title: 'Temperature of the winding', unit: '°C' },
      { symbol: 'F', title: 'Force at a contact', unit: 'N' },
      { symbol: 'N_c', title: 'Contacts that the drive carries', unit: '', value: contactsOf },
      {
        symbol: 'K_m',
        title: 'Motor force at the jaw, cold',
        unit: 'N/A',
        value: ({ actuator }) => axisOf(actuator).forcePerAmpere,
      },
      {
        symbol: 'χ_r',
        title: 'Friction over load, against it',
        unit: '',
        shown: '%',
        value: ({ actuator }) => axisOf(actuator).raise,
      },
      {
        symbol: 'χ_l',
        title: 'Friction over load, with it',
        unit: '',
        shown: '%',
        value: ({ actuator }) => axisOf(actuator).lower,
      },
    ],
    fixed: ['copper', 'reference'],
    sources: [],
  },
  {
    id: 'threshold-stop',
    title: 'Threshold stop',
    blocks: [
      say`The servo follows the profile. The current command goes through a low pass once a period of the servo:`,
      tex`i_f' = i_f + \frac{T_s}{T_th + T_s}\,(i^* - i_f)`,
      say`When $i_f$ has stood above $I_th$ without a break for longer than $t_c$, which does not count while the profile speeds up, the profile halts and the servo holds the position commanded at that moment. Set to press, it goes on towards the end of the profile with the clamp current as its limit.`,
    ],
    quantities: [
      'strategies.thresholdStop.threshold',
      'strategies.thresholdStop.confirmTime',
      'strategies.thresholdStop.filter',
    ],
    own: [{ symbol: 'i_f', title: 'Filtered command', unit: 'A' }, COMMAND, SERVO_PERIOD],
    fixed: [],
    sources: [],
  },
  {
    id: 'current-clamp',
    title: 'Current clamp',
    blocks: [
      say`The servo follows the profile into the part with its output limited to the lesser of $I_cl$ and $I_lim$, from the opening $w_cl$ on; wider open $I_lim$ holds. In contact the servo saturates and presses with that current, whatever the position.`,
    ],
    quantities: ['strategies.currentClamp.limit', 'strategies.currentClamp.from', 'servo.currentLimit'],
    own: [],
    fixed: [],
    sources: [],
  },
  {
    id: 'sensed-force',
    title: 'Sensed force',
    blocks: [
      say`A velocity PI drives the axis throughout. Until the gauge reads more than $F_t$, and the profile does not speed up, the wanted speed is the profile’s. From then on a force PID sets it once a period $T_F = 1/f_F$, limited to $\pm v_lim$:`,
      tex`w = \left(k_p + \frac{k_i\,T_F}{2}\right)(F^* - F_m) + S - k_d\,\dot F_m`,
      tex`S' = S + k_i\,T_F\,(F^* - F_m)`,
      say`The derivative acts on the measured force, filtered with the time constant $T_Fd$, which is $1/ω_g$ where none is set. The dead band gives zero where $|w| \le v_db$ and leaves $w$ as it is outside. Speeding up towards the part stays within the acceleration of the approach; slowing down is at once.`,
    ],
    quantities: [
      'strategies.sensedForce.target',
      'strategies.sensedForce.contactForce',
      'strategies.sensedForce.rate',
      'strategies.sensedForce.kp',
      'strategies.sensedForce.ki',
      'strategies.sensedForce.kd',
      'strategies.sensedForce.derivativeFilter',
      'strategies.sensedForce.deadband',
      'strategies.sensedForce.speedLimit',
      'sensors.gauge.bandwidth',
    ],
    own: [
      { symbol: 'w', title: 'Wanted speed', unit: 'm/s' },
      { symbol: 'F_m', title: 'Reading of the gauge', unit: 'N' },
      INTEGRAL('m/s'),
      {
        symbol: 'T_F',
        title: 'Period of the force loop',
        unit: 's',
        shown: 'ms',
        value: perSecond(({ strategies }) => strategies.sensedForce.rate),
      },
    ],
    fixed: [],
    sources: [],
  },
  {
    id: 'velocity-loop',
    title: 'Velocity loop of the sensed force',
    blocks: [
      tex`i^* = \left(k_p + \frac{k_i\,T_s}{2}\right)(w - v_m) + S,\qquad S' = S + k_i\,T_s\,(w - v_m)`,
      say`It runs at the servo rate, is limited to $\pm I_lim$, and takes the measured speed as the servo does.`,
    ],
    quantities: ['strategies.sensedForce.velocity.kp', 'strategies.sensedForce.velocity.ki', 'servo.currentLimit'],
    own: [{ symbol: 'w', title: 'Wanted speed', unit: 'm/s' }, SPEED, COMMAND, INTEGRAL('A'), SERVO_PERIOD],
    fixed: [],
    sources: [],
  },
]
