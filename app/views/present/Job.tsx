import { useMemo } from 'react'
import { type Scenario, shownAs, wordingOf } from '../../../sim/index.ts'
import { RunPicture } from '../../read/picture/RunPicture.tsx'
import { windowWords } from '../../read/result/windowWords.ts'
import type { RunView } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import type { SlideProps } from './Present.tsx'
import { useSize } from './useSize.ts'
import { WindowScale } from './WindowScale.tsx'

/** What is worked on, by what, what happens meanwhile, and which efforts will do. */
export function Job({ text }: SlideProps) {
  const scenario = useScenario((state) => state.scenario)
  const units = useView((state) => state.units)
  const { title, sentence, empty } = windowWords(scenario, units)
  const facts = useMemo(() => shownAs(scenario).facts(scenario, wordingOf(units)), [scenario, units])
  return (
    <div className="job">
      <OpenPicture scenario={scenario} text={text} />
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
        <section className="job-window" aria-label={shownAs(scenario).window}>
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

function OpenPicture({ scenario, text }: { scenario: Scenario; text: number }) {
  const [element, size] = useSize<HTMLDivElement>()
  const run = useMemo(() => ({ scenario, result: null, traces: null, rows: 0 }), [scenario])
  const scale = Math.max(1, text / PICTURE_TEXT)
  const { picture } = shownAs(scenario)
  return (
    <div ref={element} className="job-picture">
      {size && (
        <div style={{ height: size.height, width: size.width }}>
          <RunPicture
            run={run}
            runs={NONE}
            time={0}
            names={size.width / scale >= NAMES_FROM}
            label={`${picture.charAt(0).toUpperCase()}${picture.slice(1)}, before the run.`}
            width={size.width / scale}
            height={size.height / scale}
          />
        </div>
      )}
    </div>
  )
}

const NONE: RunView[] = []
