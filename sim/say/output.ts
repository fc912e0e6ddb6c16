/** How the quantities of an output are written: those of one that travels, or of one that turns; its effort in the unit of the job. */
import { JOBS } from '../job/index.ts'
import type { JobId } from '../scenario/index.ts'
import { QUANTITIES, shownUnit, type UnitSource } from './units.ts'
import type { Wording } from './wording.ts'

/** Units as stored and as read. */
export interface OutputUnits {
  way: UnitSource
  smallWay: UnitSource
  speed: UnitSource
  mass: UnitSource
  /** Of motor and friction, and what springs answer with [N, N/m; N·m, N·m/rad]. */
  force: UnitSource
  hardStiffness: UnitSource
  /** What is wanted and measured [N or N·m], how it grows with time, and with the way. */
  effort: UnitSource
  effortRate: UnitSource
  stiffness: UnitSource
}

export function outputUnits(job: JobId): OutputUnits {
  const { travel, effort } = JOBS[job].output
  const turns = travel === 'rad'
  const own = { effort: { unit: effort }, effortRate: { unit: `${effort}/s` } }
  return turns
    ? {
        way: QUANTITIES.turns,
        smallWay: QUANTITIES.angle,
        speed: QUANTITIES.turningSpeed,
        mass: { unit: 'kg·m²', shown: 'g·cm²' },
        force: QUANTITIES.spindleTorque,
        hardStiffness: QUANTITIES.torqueRate,
        ...own,
        stiffness: { unit: `${effort}/rad` },
      }
    : {
        way: QUANTITIES.length,
        smallWay: QUANTITIES.smallLength,
        speed: QUANTITIES.speed,
        mass: QUANTITIES.movingMass,
        force: QUANTITIES.force,
        hardStiffness: QUANTITIES.hardStiffness,
        ...own,
        stiffness: QUANTITIES.stiffness,
      }
}

type OutputWords = { [K in keyof OutputUnits]: (si: number) => string }

export function outputWords(job: JobId, words: Wording): OutputWords {
  const units = Object.entries(outputUnits(job)) as [keyof OutputUnits, UnitSource][]
  return Object.fromEntries(
    units.map(([key, source]) => [key, (si: number) => words.of(source, si)]),
  ) as unknown as OutputWords
}

/** The way of an output that drives count: as a scale factor spells it, and as a sentence has it. */
export function countedWay(job: JobId, { system }: Pick<Wording, 'system'>) {
  if (JOBS[job].output.travel === 'rad') {
    const shown = shownUnit({ unit: 'rad' }, system)
    return { name: 'radian', shown, remedy: shown }
  }
  const remedy = shownUnit(QUANTITIES.length, system)
  return system === 'us'
    ? { name: 'inch', shown: remedy, remedy }
    : { name: 'metre', shown: shownUnit({ unit: 'm' }, system), remedy }
}
