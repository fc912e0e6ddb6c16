import { useMemo } from 'react'
import type { ArmMove, Scenario } from '../../../sim/index.ts'
import { restFrame } from '../../picture/grip/frameAt.ts'
import { windowWords } from '../../read/result/windowWords.ts'
import { Picture } from '../../read/stage/Lane.tsx'
import { type Quantity, quantityUnit, type UnitSystem } from '../../read/units.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { formatPlain, withUnit } from '../../ui/format.ts'
import type { SlideProps } from './Present.tsx'
import { useSize } from './useSize.ts'
import { WindowScale } from './WindowScale.tsx'

/** What is to be gripped, what the arm does with it, and which forces will do. */
export function Job({ text }: SlideProps) {
  const scenario = useScenario((state) => state.scenario)
  const units = useView((state) => state.units)
  const { title, sentence, empty } = windowWords(scenario, units)
  const facts = useMemo(() => factsOf(scenario, units), [scenario, units])
  return (
    <div className="job">
      <OpenGripper scenario={scenario} text={text} />
      <div className="job-words">
        {scenario.notes && <p className="job-notes">{scenario.notes}</p>}
        <dl className="job-facts">
          {facts.map(({ name, words }) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{words}</dd>
            </div>
          ))}
        </dl>
        <section className="job-window" aria-label="Force window">
          <WindowScale scenario={scenario} units={units} text={text} />
          <p data-empty={empty}>
            <strong>{title}</strong> {sentence}
          </p>
        </section>
      </div>
    </div>
  )
}

/** Words in the picture are made for type of this size, and need so much width [px]. */
const PICTURE_TEXT = 13
const NAMES_FROM = 480

function OpenGripper({ scenario, text }: { scenario: Scenario; text: number }) {
  const [element, size] = useSize<HTMLDivElement>()
  const frame = useMemo(() => restFrame(scenario), [scenario])
  const scale = Math.max(1, text / PICTURE_TEXT)
  return (
    <div ref={element} className="job-picture">
      {size && (
        <div style={{ height: size.height, width: size.width }}>
          <Picture
            frame={frame}
            scenario={scenario}
            scales={undefined}
            names={size.width / scale >= NAMES_FROM}
            label="The gripper in section, open."
            width={size.width / scale}
            height={size.height / scale}
          />
        </div>
      )}
    </div>
  )
}

/** Part, approach and arm in a line each. */
export function factsOf(scenario: Scenario, units: UnitSystem): { name: string; words: string }[] {
  const say = (quantity: Quantity, value: number) => {
    const { symbol, toShown } = quantityUnit(quantity, units)
    return withUnit(formatPlain(toShown(value), 3), symbol)
  }
  const { part, jaws, approach, arm } = scenario
  const moves = arm.moves.map((move) => moveWords(move, say('acceleration', Math.abs(move.acceleration))))
  return [
    { name: 'Part', words: `${say('length', part.width)} wide, ${say('mass', part.mass)}` },
    {
      name: 'Jaws',
      words: `${jaws.layout === 'mirrored' ? 'both driven' : 'one driven against a fixed one'}, closing with ${say('speed', approach.speed)}`,
    },
    { name: 'Arm', words: moves.length > 0 ? sentence(moves) : 'stands still' },
  ]
}

const DIRECTIONS: Record<ArmMove['axis'], [string, string]> = {
  up: ['up', 'down'],
  across: ['sideways', 'sideways'],
  along: ['along the grip', 'along the grip'],
}

const moveWords = ({ axis, acceleration }: ArmMove, size: string) =>
  `${DIRECTIONS[axis][acceleration < 0 ? 1 : 0]} with ${size}`

const sentence = (moves: string[]) => moves.join(', then ')
