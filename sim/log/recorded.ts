/** Columns of a recording as the model is held against them. */
import { axisOf } from '../axis/reflect.ts'
import { jobOf } from '../job/index.ts'
import type { Scenario } from '../scenario/index.ts'
import { NoFit } from './facts.ts'
import { logOf } from './jobs/index.ts'
import type { Measured, MeasuredChannel } from './measured.ts'
import type { Channel } from './read/channels.ts'
import { channelOf, type Recording } from './read/log.ts'
import { measures, unitsSpelled } from './read/units.ts'

/** What was made of a column beyond its unit: a command in volts or newtons, taken for amperes. */
export interface Taken {
  channel: MeasuredChannel
  header: string
  unit: string
  /** Amperes for each of it. */
  scale: number
}

/** The columns of a recording that the model knows, by their channels. Columns without a known scale are left out. Throws a NoFit where positions are those of another kind of output. */
export function measuredOf(recording: Recording, scenario: Scenario): { measured: Measured; taken: Taken[] } {
  refuseUnlike(recording, jobOf(scenario).output.travel === 'rad')
  const known = (channel: Channel) => {
    const found = channelOf(recording, channel)
    return found && found.column.scale !== null && found.column.most > found.column.least ? found : null
  }
  const column = (...channels: Channel[]) => channels.map(known).find((each) => each !== null)?.values
  const channels: Measured['channels'] = {}
  const put = (channel: MeasuredChannel, values: Float64Array | undefined) => {
    if (values) channels[channel] = values
  }
  const [motor, output] = [column('motorTravel'), column('travel')]
  put('target', column('target'))
  put('motorTravel', motor ?? output)
  if (motor) put('travel', output)
  put('speed', column('speed'))
  put('current', column('current'))
  put('voltage', column('voltage'))
  put('force', column(...logOf(scenario).effort))
  const command = channelOf(recording, 'command')
  const taken: Taken[] = []
  if (command && command.column.most > command.column.least) {
    const { header, unit, si } = command.column
    const scale = si === 'N' ? 1 / axisOf(scenario.actuator).forcePerAmpere : 1
    put(
      'command',
      command.values.map((value) => scale * value),
    )
    if (si !== 'A') taken.push({ channel: 'command', header, unit, scale })
  }
  const trace = recording.columns.every(({ reason }) => reason.kind === 'trace')
  return { measured: { time: recording.time, channels, trace }, taken }
}

const POSITIONS = ['target', 'motorTravel', 'travel'] as const

/** Throws a NoFit where positions are told as lengths and the output turns, or as nothing but angles without a way for them and it does not. */
function refuseUnlike(recording: Recording, turning: boolean): void {
  const columns = POSITIONS.flatMap((channel) => channelOf(recording, channel)?.column ?? [])
  const unlike = columns.find(
    ({ scale, unit }) =>
      scale === null && unitsSpelled(unit).some((each) => (turning ? measures(each, 'm') : each.turns !== null)),
  )
  if (unlike && (turning || columns.every(({ scale }) => scale === null)))
    throw new NoFit({ kind: turning ? 'ways' : 'angles', header: unlike.header })
}
