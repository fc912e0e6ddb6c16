/**
 * What names of columns say, in English, French, German, Italian and Spanish. A new word is one word in its line: without accents, in
 * lower case; `*stem` counts within a compound as well, such as `motorstrom`.
 */
import type { Channel } from './channels.ts'

/** A quantity that is measured, or `none` for what only looks like one: a difference, an input of any kind, a supply. */
export type Measured =
  | 'position'
  | 'speed'
  | 'force'
  | 'current'
  | 'torque'
  | 'voltage'
  | 'temperature'
  | 'recording'
  | 'flag'
  | 'time'

/** The first line that has a word of the name decides: "current position" is a position, "torque current" a current. */
const WORDS: [Measured | 'none', string][] = [
  [
    'none',
    'error err lag deviation diff difference residual fehler *schleppfehler *abweichung *regeldifferenz erreur ecart errore scarto desviacion ana analog ain ai adc din digital input entree eingang ingresso entrada channel ch kanal voie canal canale bus dc link supply battery *zwischenkreis *versorgung alimentation alimentacion alimentazione acceleration accel acc *beschleunigung accelerazione aceleracion jerk id phase ia ib ic iu iv iw ua ub uc power *leistung puissance potenza potencia energy limit max frequency *frequenz frequence checksum crc',
  ],
  [
    'position',
    'position pos posn x y z *position *istlage *solllage lage lageistwert lagesollwert *lagesoll *lageist posizione posicion displacement displ disp deplacement distance *weg stroke travel hub course corsa recorrido carrera extension ext elongation angle ang theta *winkel angolo angulo encoder enc opening *stellung spostamento desplazamiento depth height',
  ],
  ['speed', 'speed velocity vel velo spd *geschwindigkeit *geschw *drehzahl vitesse velocidad velocita omega rpm'],
  [
    'force',
    'force forces *kraft fuerza forza effort weight *gewicht poids peso gauge loadcell newton newtons load thrust pull f fz fx fy grip',
  ],
  ['current', 'current curr cur amps ampere *strom courant corriente corrente i iq iact imot'],
  ['torque', 'torque trq tq *moment moment couple coppia par momento'],
  ['voltage', 'voltage volt volts *spannung voltaje tensione u vm umot'],
  ['temperature', 'temperature temp *temperatur temperatura tmp'],
  [
    'time',
    'time t temps zeit *zeitstempel *zeit tiempo tempo elapsed timestamp stamp ts clock millis micros seconds second sec secs date datetime uhrzeit ms epoch unix ticks tick',
  ],
  [
    'recording',
    'trial run recording record segment block repetition repeat rep sequence seq sequenz *versuch essai prova prueba ensayo *messung experiment cycle zyklus ciclo flag',
  ],
  [
    'flag',
    'enable enabled active trigger trig moving status state switch fault alarm *schalter *freigabe valid contact gripped homed busy',
  ],
]

/** Words that a value is asked for rather than measured. */
const WANTED =
  'reference ref setpoint set sp setpt desired des target tgt demand dem command cmd commanded cmnd *soll *sollwert soll vorgabe consigne riferimento consigna mando referencia objetivo wanted profile request req goal out output control'
const COMMANDS = 'command cmd commanded cmnd demand mando out output control'
/** That it is measured. */
const ACTUAL =
  'actual act measured meas feedback fb fbk ist *istwert *istpos *istlage *istdreh *istgeschw *iststrom *istkraft *istmoment mesure mesuree reel reelle real reale misurata misurato medida medido'
/** That it is of the motor. */
const MOTOR = 'motor moteur motore mot'

/** Words that mean several things: the unit decides; with `!`, the first of them where there is no unit. */
const AMBIGUOUS: [word: string, Measured[], by: '' | '!'][] = [
  ['tension', ['voltage', 'force'], ''],
  ['v', ['speed', 'voltage'], '!'],
  ['n', ['speed'], ''],
  ['s', ['position', 'time'], ''],
  ['p', ['position'], ''],
  ['m', ['torque'], ''],
]

export interface Named {
  measured: Measured | 'none' | null
  wanted: boolean
  /** A word that says it is what the drive is told. */
  commanded: boolean
  actual: boolean
  motor: boolean
  /** The word that said what it is. */
  word: string
  /** What an ambiguous word may mean, and whether it means the first of them without a unit. */
  maybe: readonly Measured[]
  default: boolean
}

type Matcher = (words: readonly string[]) => string | null

function matcher(text: string): Matcher {
  const whole = new Set<string>()
  const stems: string[] = []
  for (const word of text.split(' ')) word.startsWith('*') ? stems.push(word.slice(1)) : whole.add(word)
  return (words) => words.find((word) => whole.has(word) || stems.some((stem) => word.includes(stem))) ?? null
}

const QUANTITIES = WORDS.map(([measured, words]) => ({ measured, match: matcher(words) }))
const wantedIn = matcher(WANTED)
const commandIn = matcher(COMMANDS)
const actualIn = matcher(ACTUAL)
const motorIn = matcher(MOTOR)

/** Words of a name: accents off, `motorSpeed` and `pos1` taken apart. */
export function wordsOf(name: string): string[] {
  return name
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .replaceAll('ß', 'ss')
    .replaceAll(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .replaceAll(/(\p{L})(\d)/gu, '$1 $2')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '')
}

/** A single letter says something only where nothing else does but that it is wanted, measured, or of the motor. */
function telling(words: readonly string[]): string[] {
  const rest = words.filter(
    (word) => !/^\d+$/.test(word) && ![wantedIn, actualIn, motorIn].some((match) => match([word]) !== null),
  )
  return words.filter((word) => word.length > 1 || rest.length === 1)
}

export function readName(name: string): Named {
  const words = telling(wordsOf(name))
  const found = QUANTITIES.map(({ measured, match }) => ({ measured, word: match(words) })).find(
    ({ word }) => word !== null,
  )
  const [wanted, actual] = [wantedIn(words), actualIn(words)]
  const ambiguous = found ? undefined : AMBIGUOUS.find(([word]) => words.includes(word))
  return {
    measured: found?.measured ?? null,
    wanted: wanted !== null && actual === null,
    commanded: commandIn(words) !== null,
    actual: actual !== null,
    motor: motorIn(words) !== null,
    word: found?.word ?? ambiguous?.[0] ?? wanted ?? '',
    maybe: ambiguous?.[1] ?? [],
    default: ambiguous?.[2] === '!',
  }
}

/** Channels of each quantity: as measured, as wanted. */
export const CHANNELS_OF: Record<Measured, [measured: Channel | 'time', wanted: Channel | 'time']> = {
  position: ['travel', 'target'],
  speed: ['speed', 'wantedSpeed'],
  force: ['gauge', 'command'],
  current: ['current', 'command'],
  torque: ['torque', 'command'],
  voltage: ['voltage', 'command'],
  temperature: ['temperature', 'temperature'],
  recording: ['recording', 'recording'],
  flag: ['flag', 'flag'],
  time: ['time', 'time'],
}
