import { useRef } from 'react'
import { useScenario } from '../../store/scenario.ts'
import { Contents, HeadingAt } from './Contents.tsx'
import { FixedFigures } from './FixedFigures.tsx'
import { Limits } from './Limits.tsx'
import { SectionView } from './SectionView.tsx'
import { Simplifications } from './Simplifications.tsx'
import { sectionsOf } from './sections/index.ts'
import { SOURCES } from './sources.ts'
import { useScrollable } from './useScrollable.ts'
import './model.css'

const INTRO = {
  whole:
    'This note says what the bench computes: the equations in the order of the power’s way, what is left out, and how far off the figures can be for that.',
  own: 'This note says what the bench computes of the work itself. Winding, motor, transmission, sensors, drive and strategies are those of a grip, and their equations stand here while one is on the bench.',
}

/** What the simulator computes, what it leaves out and how far off that can be, as a technical note. */
export function Model() {
  const scenario = useScenario((state) => state.scenario)
  const note = useRef<HTMLElement>(null)
  useScrollable(note)
  return (
    <div className="model">
      <Contents job={scenario.job} />
      <article className="model-note" ref={note}>
        <h1>Model</h1>
        <p>
          {INTRO[scenario.job === 'grip' ? 'whole' : 'own']} Values are those of the scenario on the bench,{' '}
          {scenario.name}.
        </p>
        <Limits />
        {sectionsOf(scenario.job).map((section) => (
          <SectionView key={section.id} section={section} scenario={scenario} />
        ))}
        <Simplifications key={scenario.job} scenario={scenario} />
        <FixedFigures />
        <section aria-labelledby="model-sources">
          <HeadingAt id="sources">Sources</HeadingAt>
          <ul>
            {SOURCES.map(({ id, text, memory }) => (
              <li key={id}>
                {text}
                {memory && ' Cited from memory.'}
              </li>
            ))}
          </ul>
          <p>
            Figures marked as common practice have no source. Published examples and closed forms that the simulator is
            held against stand in its checks, each with where it comes from.
          </p>
        </section>
      </article>
    </div>
  )
}
