/** Every actuator family that moves a jaw, but for the one that the page opens with, and its drawing: a new family is one file here and one line. */
import type { Actuator, SpindleFamily } from '../../../sim/index.ts'
import { brushScrew } from './brushScrew.tsx'
import type { FamilyDrawing } from './drawing.ts'
import { gearedRack } from './gearedRack.tsx'
import { linearCoils } from './linearCoils.tsx'
import { linearMagnets } from './linearMagnets.tsx'
import { movingMagnet } from './movingMagnet.tsx'
import type { FirstFamily } from './registry.ts'
import { stepScrew } from './stepScrew.tsx'
import { tubularCoils } from './tubularCoils.tsx'
import { tubularRod } from './tubularRod.tsx'
import { voiceCoil } from './voiceCoil.tsx'

export const OTHER_DRAWINGS: Record<Exclude<Actuator['family'], SpindleFamily | FirstFamily>, FamilyDrawing> = {
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
