/** A verdict by colour, shape and word, and beside it what else is to be known of the run: overloaded, short of a requirement, in doubt. */
import type { RunResult } from '../../../sim/index.ts'
import { type AnyVerdict, type Tone, toneOf, VERDICT_WORDS } from './words.ts'
import './verdictWord.css'

/** Two jaws as bars and what became of the part between them, in a square of 16; a closure as its lid on a neck, a web between its rolls. */
const MARKS: Record<AnyVerdict | 'overloaded' | 'wanting' | 'doubted', string> = {
  held: 'M3 3V13M13 3V13M5 8A3 3 0 1 0 11 8A3 3 0 1 0 5 8',
  slipped: 'M3 2V10M13 2V10M5 11A3 3 0 1 0 11 11A3 3 0 1 0 5 11M8 1V5M6.5 3.5L8 5L9.5 3.5',
  loose: 'M1.5 3V13M14.5 3V13M5.5 9.5A2.5 2.5 0 1 0 10.5 9.5A2.5 2.5 0 1 0 5.5 9.5M3 6L4.5 4.5M13 6L11.5 4.5',
  dropped: 'M3 1V7M13 1V7M5.5 13A2.5 2.5 0 1 0 10.5 13A2.5 2.5 0 1 0 5.5 13M8 1V8M6 6L8 8L10 6',
  marked: 'M3 3V13M13 3V13M5 6Q8 3 11 6L9.5 8L11 10Q8 13 5 10L6.5 8Z',
  crushed: 'M3 3V13M13 3V13M8 3L6.5 6L9.5 8L6.5 10L8 13M6 4.5A4 4 0 0 0 6 11.5M10 4.5A4 4 0 0 1 10 11.5',
  missed: 'M6.5 1V7M9.5 1V7M5.5 12A2.5 2.5 0 1 0 10.5 12A2.5 2.5 0 1 0 5.5 12M1 15H15',
  unstable: 'M1 8L2.5 7L4.5 9.5L6.5 5.5L9 11.5L11.5 3L14.5 14',
  seated: 'M2 5V14H14V5M5 14V3H11V14M8 14V3',
  short: 'M2 8V15H14V8M5 11V1H11V11M5 11H11M8 13.5V12',
  slack: 'M2 5V14H14V5M6 14V3H10V14M3.5 9H4.5M11.5 9H12.5',
  tilted: 'M2 7V15H14V7M4 13L7 2L12 4L9.5 14Z',
  forced: 'M2 5V14H14V5M5 12V3H11V12M4 14L6 12L8 14L10 12L12 14M8 1V6M6.5 4.5L8 6L9.5 4.5',
  tight: 'M2 3.5H14V8M2 3.5V8M4.5 7V14H11.5V7M4.5 6H11.5',
  stripped: 'M2 3.5H14V8M2 3.5V8M4.5 8V14H11.5V8M4.5 9L7 10.5M11.5 9L9 10.5M5 13L7 11.5M11 13L9 11.5M8 5V8',
  'cross-threaded': 'M1.5 6L13.5 2L15 6.5M1.5 6L3 10M4.5 9V14H11.5V8',
  taut: 'M1 11A2.5 2.5 0 1 0 6 11A2.5 2.5 0 1 0 1 11M10 11A2.5 2.5 0 1 0 15 11A2.5 2.5 0 1 0 10 11M3.5 8.5H12.5',
  stretched: 'M1 8H5M11 8H15M3 6L1 8L3 10M13 6L15 8L13 10M5 6V10L8 8.8L11 10V6L8 7.2Z',
  torn: 'M1 6H6L7.5 8L6 10H1M15 6H10L8.5 8L10 10H15',
  overloaded: 'M2.5 13A6.5 6.5 0 1 1 13.5 13M8 9.5L14.5 3.5M12 2.5L14.5 3.5L14 6',
  wanting: 'M2 3.5H14M2 8H8M2 12.5H6M9.5 8.5L14 13M14 8.5L9.5 13',
  doubted: 'M1.5 8A6.5 6.5 0 1 0 14.5 8A6.5 6.5 0 1 0 1.5 8M6 6.5Q6 4.5 8 4.5T10 6.5Q10 7.5 8 8.5V9.5M8 11V12.2',
}

function Said({ mark, tone, word }: { mark: keyof typeof MARKS; tone: Tone; word: string }) {
  return (
    <span className="verdict-said" data-tone={tone}>
      <svg className="verdict-mark" viewBox="0 0 16 16" aria-hidden="true">
        <path className={`verdict-mark-${tone}`} d={MARKS[mark]} />
      </svg>
      {word}
    </span>
  )
}

/** A verdict by itself, where nothing else is known of the run. */
export const BareVerdict = ({ verdict }: { verdict: AnyVerdict }) => (
  <Said mark={verdict} tone={toneOf(verdict)} word={VERDICT_WORDS[verdict]} />
)

type Known = Pick<RunResult, 'verdict' | 'overloads' | 'requirements' | 'doubt'>

export function VerdictWord({ result: { verdict, overloads, requirements, doubt } }: { result: Known }) {
  return (
    <span className="verdict-words">
      <BareVerdict verdict={verdict as AnyVerdict} />
      {doubt && <> {<Said mark="doubted" tone="failure" word="In doubt" />}</>}
      {overloads.length > 0 && <> {<Said mark="overloaded" tone="failure" word="Overloaded" />}</>}
      {requirements.some(({ met }) => !met) && <> {<Said mark="wanting" tone="failure" word="Requirement missed" />}</>}
    </span>
  )
}
