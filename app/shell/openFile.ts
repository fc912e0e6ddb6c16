import { create } from 'zustand'
import type { Fault } from '../../sim/index.ts'
import { readScenarioFile } from '../store/file.ts'
import { useScenario } from '../store/scenario.ts'

/** The file that was refused last, with its faults; null: none to show. */
export const useRefused = create<{ refused: { name: string; faults: Fault[] } | null }>()(() => ({ refused: null }))

/** Puts a scenario file on the bench, or says what is wrong with it and leaves the bench as it was. */
export async function openFile(file: File) {
  const read = await readScenarioFile(file)
  if (read.ok) useScenario.getState().load(read.scenario)
  useRefused.setState({ refused: read.ok ? null : { name: file.name, faults: read.faults } })
}
