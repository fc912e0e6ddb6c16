/** All that a settings sheet says, as facts. */
import type { JobId, Scenario } from '../../scenario/index.ts'
import { analyseLoops, type LoopsResult } from '../analyse.ts'
import { type Entered, enteredScenario } from './entered.ts'
import { type Remedy, remediesFor, type Trouble, troubleOf } from './remedies.ts'
import { type DriveResolution, driveResolutions } from './resolution.ts'
import { type DriveScales, type DriveSetting, driveSettings } from './settings.ts'

export interface JudgedSetting extends DriveSetting {
  trouble: Trouble | null
  /** Changes of one scale factor, each of which ends the trouble without making another. */
  remedies: Remedy[]
}

/** Throws as driveSettings does. */
export const judgedSettings = (scenario: Scenario, scales: DriveScales): JudgedSetting[] =>
  driveSettings(scenario, scales).map((setting) => ({
    ...setting,
    trouble: troubleOf(setting),
    remedies: remediesFor(scenario, scales, setting),
  }))

export interface EnteredLoops extends Omit<Entered, 'scenario'> {
  /** Margins with the integers, at the periods of the drive. */
  loops: LoopsResult
}

/** Throws as driveSettings and analyseLoops do. */
export function enteredLoops(scenario: Scenario, scales: DriveScales): EnteredLoops {
  const { scenario: entered, ...rest } = enteredScenario(scenario, scales)
  return { ...rest, loops: analyseLoops(entered) }
}

export interface DriveSheet {
  /** Of the scenario. */
  name: string
  job: JobId
  scales: DriveScales
  settings: JudgedSetting[]
  resolutions: DriveResolution[]
  entered: EnteredLoops
}

/** Throws as driveSettings and analyseLoops do. */
export const driveSheet = (scenario: Scenario, scales: DriveScales): DriveSheet => ({
  name: scenario.name,
  job: scenario.job,
  scales,
  settings: judgedSettings(scenario, scales),
  resolutions: driveResolutions(scenario, scales),
  entered: enteredLoops(scenario, scales),
})
