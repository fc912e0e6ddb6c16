/** Gain design for each loop, and what becomes of the loop with a design's gains. */
import { editScenario, type Fault, type Scenario } from '../../scenario/index.ts'
import { type AnalysisOptions, analyseLoops, type LoopsResult } from '../analyse.ts'
import type { LoopId } from '../model.ts'
import type { WorkingPointOptions } from '../working-point.ts'
import { currentDesigns } from './current.ts'
import type { GainDesign, Wanted } from './design.ts'
import { forceDesigns } from './force.ts'
import { positionDesigns, velocityDesigns } from './motion.ts'

type Designer = (scenario: Scenario, wanted: Wanted, options: WorkingPointOptions) => GainDesign[]

const DESIGNERS: Record<LoopId, Designer> = {
  current: currentDesigns,
  position: positionDesigns,
  velocity: velocityDesigns,
  force: forceDesigns,
}

/** Every method for a loop. Throws a RangeError for a wish or a working point out of range. */
export function designGains(
  scenario: Scenario,
  loop: LoopId,
  wanted: Wanted = {},
  options: WorkingPointOptions = {},
): GainDesign[] {
  for (const name of ['bandwidth', 'damping'] as const) {
    const value = wanted[name]
    if (value !== undefined && !(value > 0 && Number.isFinite(value)))
      throw new RangeError(`${name}: given ${value}, allowed above 0`)
  }
  return DESIGNERS[loop](scenario, wanted, options)
}

/** The loop with the design's gains, at all working points, with its step responses; or the faults that keep them from the scenario. */
export function tryDesign(
  scenario: Scenario,
  design: GainDesign,
  options: AnalysisOptions = {},
): { ok: true; scenario: Scenario; result: LoopsResult } | { ok: false; faults: Fault[] } {
  const edited = editScenario(scenario, design.edits)
  if (!edited.ok) return edited
  return {
    ok: true,
    scenario: edited.scenario,
    result: analyseLoops(edited.scenario, { curves: true, ...options, loops: [design.loop] }),
  }
}
