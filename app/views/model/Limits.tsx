import { HeadingAt } from './Contents.tsx'

const NOT_FOR = [
  'Safety functions of any kind. Nothing here limits a force, a speed or a start, and nothing here proves that something does.',
  'Limits of force and pressure on people, as in collaborative operation. Peaks at a hand are not those at a part, and they are measured, not simulated.',
  'Release of a machine, a gripper or a process without measuring on the hardware with the parts that it will hold.',
  'Parts whose damage limits, stiffness or friction were guessed: the verdict is then a guess as well.',
  'Parts that hurt somebody when they fall or burst, unless something other than the grip holds them.',
  'Life, wear and fatigue of axis, pads or parts. One grip is simulated, not a million.',
  'Choice of a motor by its heat alone: mounting, air and losses that are not modelled decide.',
  'Figures after a part has broken, and runs called unstable.',
]

export function Limits() {
  return (
    <section aria-labelledby="model-limits">
      <HeadingAt id="limits">Not to be used for</HeadingAt>
      <ul>
        {NOT_FOR.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <p>
        The risk assessment of the machine, local codes, the standards in force and licensed practice decide; where they
        say something else, they are right. Commission with reduced current and speed, with hands out of reach and the
        energy locked out where someone works.
      </p>
    </section>
  )
}
