/** Every actuator family that moves a jaw and its drawing: a new family is one file here and one line. */
import type { Actuator, Scenario, SpindleFamily } from '../../../sim/index.ts'
import { brushlessScrew } from './brushlessScrew.tsx'
import { brushScrew } from './brushScrew.tsx'
import type { FamilyDrawing } from './drawing.ts'
import { gearedRack } from './gearedRack.tsx'
import { linearCoils } from './linearCoils.tsx'
import { linearMagnets } from './linearMagnets.tsx'
import { movingMagnet } from './movingMagnet.tsx'
import { stepScrew } from './stepScrew.tsx'
import { tubularCoils } from './tubularCoils.tsx'
import { tubularRod } from './tubularRod.tsx'
import { voiceCoil } from './voiceCoil.tsx'

const FAMILY_DRAWINGS: Record<Exclude<Actuator['family'], SpindleFamily>, FamilyDrawing> = {
  'brushless-screw': brushlessScrew,
  'brush-screw': brushScrew,
  'step-screw': stepScrew,
  'geared-rack': gearedRack,
  'voice-coil': voiceCoil,
  'linear-magnets-moving': linearMagnets,
  'linear-coils-moving': linearCoils,
  'tubular-rod-moving': tubularRod,
  'tubular-coils-moving': tubularCoils,
  'moving-magnet': movingMagnet,
}

/** Throws a TypeError for an axis that moves no jaw. */
export function drawingOf({ actuator }: Pick<Scenario, 'actuator'>): FamilyDrawing {
  if (actuator.kind === 'spindle') throw new TypeError('a spindle moves no jaw')
  return FAMILY_DRAWINGS[actuator.family]
}
