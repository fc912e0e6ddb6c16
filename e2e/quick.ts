import { scenarioToLink } from '../app/store/link.ts'
import { ALL_PRESETS, checkScenario, PRESETS } from '../sim/index.ts'
import { PRESS_PRESETS } from '../sim/others.ts'

/** The link of short grips of parts of which two quantities vary: quick to study. `more` are further keys of the file. */
export function quickLink(more: object = {}): string {
  const checked = checkScenario({
    ...PRESETS[0]!.scenario,
    run: { duration: 0.6 },
    arm: { gravity: 'across', lift: 0.45, moves: [] },
    spread: {
      varies: [
        { path: 'part.crackForce', law: 'lognormal', factor: 1.25 },
        { path: 'part.mass', law: 'normal', sd: 0.03, share: true },
      ],
    },
    ...more,
  })
  if (!checked.ok) throw new Error('refused')
  return `./#s=${scenarioToLink(checked.scenario)}`
}

/** The same of a bushing onto its shoulder, in one short press. */
export function pressLink(more: object = {}): string {
  const checked = checkScenario({ ...PRESS_PRESETS[0]!.scenario, run: { duration: 1.7 }, ...more })
  if (!checked.ok) throw new Error('refused')
  return `./#s=${scenarioToLink(checked.scenario)}`
}

/** The link of a preset of any job. */
export const linkOf = (id: string): string =>
  `./#s=${scenarioToLink(ALL_PRESETS.find((preset) => preset.id === id)!.scenario)}`
