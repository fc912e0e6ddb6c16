/** The loops of a web's tension as the command line prints them. */
import type { WebLoop } from '../loops/web.ts'
import { inPlainSpaces, NO_FIGURE } from './figure.ts'
import { figure } from './wording.ts'

export const WEB_LOOPS_NOTE =
  'At the start of the run, with viscous friction only: dry friction of axis and idlers, losses of a gear under load, the dead band and the limits of speed and current are not seen, and a roll that grows changes the loops.'

const HEAD = ['loop', 'at', 'crossover', 'phase margin', 'gain margin', 'peak sens.', 'bandwidth', 'stable']
const UNITS = ['', '', 'rad/s', 'deg', 'dB', '', 'rad/s', '']

export function webLoopsTable(loops: readonly WebLoop[]): string {
  const cell = (value: number | null | undefined) => (value == null ? NO_FIGURE : inPlainSpaces(figure(value)))
  const line = (cells: string[]) =>
    cells
      .map((text, n) => (n < 2 ? text.padEnd(10) : text.padStart(14)))
      .join('')
      .trimEnd()
  const rows = loops.map(({ loop, at, crossover, margins, stability }) =>
    line([
      loop,
      at,
      cell(crossover),
      cell(margins?.phaseMargin),
      cell(margins?.gainMargin),
      cell(margins?.peakSensitivity),
      cell(margins?.bandwidth),
      stability === 'stable' ? 'yes' : stability === 'border' ? 'on the border' : 'no',
    ]),
  )
  return [line(HEAD), line(UNITS), ...rows, '', WEB_LOOPS_NOTE].join('\n')
}
