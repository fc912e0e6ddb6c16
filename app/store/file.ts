/** Scenario files: opening one that was picked or dropped, and saving. */
import { type Fault, LONGEST_FILE, parseScenario, type Scenario } from '../../sim/index.ts'
import { fetchOthers, lacksJob } from './others.ts'

export type Read = { ok: true; scenario: Scenario } | { ok: false; faults: Fault[] }

/** Never throws; a file that is too long is refused before it is read. */
export async function readScenarioFile(file: File): Promise<Read> {
  if (file.size > LONGEST_FILE) return refuse(`a file of ${file.size} bytes`, `at most ${LONGEST_FILE} bytes`)
  try {
    const text = await file.text()
    const read = parseScenario(text)
    return lacksJob(read) ? await withOthers(text) : read
  } catch {
    return refuse('a file that cannot be read', 'a readable scenario file')
  }
}

async function withOthers(text: string): Promise<Read> {
  try {
    await fetchOthers()
  } catch {
    return refuse(
      'a job whose description could not be fetched',
      'another try when the page reaches where it came from',
    )
  }
  return parseScenario(text)
}

const refuse = (given: string, allowed: string): Read => ({ ok: false, faults: [{ path: '', given, allowed }] })

export function saveScenario(scenario: Scenario) {
  const text = `${JSON.stringify(scenario, null, 2)}\n`
  download(new Blob([text], { type: 'application/json' }), `${fileName(scenario.name)}.json`)
}

/** Hands a file to the person. */
export function download(blob: Blob, name: string) {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(blob)
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000)
}

/** A scenario's name as a file name that every system takes. */
export const fileName = (name: string) =>
  name
    .normalize('NFKD')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase()
    .slice(0, 80) || 'grip'
