import type { BorderMap } from '../ask/spread/border.ts'
import { type MapAxis, runMap, UNFIT } from '../ask/spread/run-map.ts'
import { JOBS } from '../job/index.ts'
import { JOB_WORDS, jobWords } from '../say/jobs.ts'
import { grouped } from '../say/spread.ts'
import { type JobId, quantityAt, readPath, type Scenario } from '../scenario/index.ts'
import {
  type Command,
  isJson,
  optionsOf,
  Refused,
  SCENARIO_OPTIONS,
  SCENARIO_USAGE,
  strategiesNamed,
} from './command.ts'
import { crew } from './crew.ts'
import { readScenario } from './input.ts'
import { print, printJson } from './output.ts'

export const map: Command = {
  id: 'map',
  takes: `FILE --x PATH=FROM:TO --y PATH=FROM:TO [--strategy ID|all] ${SCENARIO_USAGE}`,
  does: 'what becomes of the work over two parameters, and where one verdict gives way to another',
  async run(args) {
    const known = {
      ...SCENARIO_OPTIONS,
      x: { type: 'string', default: '' },
      y: { type: 'string', default: '' },
      strategy: { type: 'string', default: 'all' },
    } as const
    const { values, positionals } = optionsOf(args, known, 1)
    const json = isJson(values.format)
    const scenario = readScenario(positionals[0], values.set, null)
    const strategies = strategiesNamed(values.strategy, scenario)
    const [x, y] = [axisOf('--x', values.x, scenario), axisOf('--y', values.y, scenario)]
    if (x.path === y.path) throw new Refused([`--y: given ${y.path} again, allowed another parameter than --x`])
    const results = []
    for (const strategy of strategies) {
      const { grid: _, ...border } = await runMap(
        scenario,
        { strategy, x, y },
        crew,
        tellPoints(strategy, jobWords(scenario).study.runs),
      )
      results.push({ strategy, ...border })
    }
    if (json) printJson({ format: 'jawbench-map', version: 1, x, y, results })
    else print(results.map((each) => table(scenario.job, each.strategy, x, y, each)).join('\n\n'))
    return 0
  },
}

/** PATH=FROM:TO within the range of the quantity. */
function axisOf(option: string, given: string, scenario: Scenario): MapAxis {
  const [, path, from, to] = /^([^=]+)=([^:]+):([^:]+)$/.exec(given) ?? []
  const [low, high] = [Number(from), Number(to)]
  if (path === undefined || !Number.isFinite(low) || !Number.isFinite(high) || low >= high)
    throw new Refused([`${option}: given "${given}", allowed PATH=FROM:TO such as part.mass=0.1:0.4, FROM below TO`])
  const schema = quantityAt(scenario, path)
  if (!schema || typeof readPath(scenario, path) !== 'number')
    throw new Refused([`${option}: given "${path}", allowed the path of a quantity of the scenario`])
  if (low < schema.minimum || high > schema.maximum)
    throw new Refused([
      `${option}: given ${low} to ${high}, allowed ${schema.minimum} to ${schema.maximum} ${schema.unit}`,
    ])
  return { path, from: low, to: high }
}

function tellPoints(strategy: string, runs: string): (points: number) => boolean {
  let next = 1000
  return (points) => {
    if (points >= next) process.stderr.write(`${strategy}: ${grouped(points)} ${runs}\n`)
    if (points >= next) next = points + 1000
    return true
  }
}

const COLUMNS = 64
const ROWS = 20

function table(
  job: JobId,
  strategy: string,
  x: MapAxis,
  y: MapAxis,
  { cells, evaluations, borders, hidden }: BorderMap,
): string {
  const letters = lettersOf(job)
  const letterOf = (name: string) => letters.get(name) ?? '?'
  const { runs, done } = JOB_WORDS[job].study
  const classAt = (at: number, up: number) =>
    cells.find((cell) => at >= cell.x && at <= cell.x + cell.width && up >= cell.y && up <= cell.y + cell.height)
      ?.corners[0] ?? '?'
  const lines = Array.from({ length: ROWS }, (_, row) => {
    const up = y.to - ((row + 0.5) / ROWS) * (y.to - y.from)
    return Array.from({ length: COLUMNS }, (__, column) =>
      letterOf(classAt(x.from + ((column + 0.5) / COLUMNS) * (x.to - x.from), up)),
    ).join('')
  })
  const present = [...new Set(cells.flatMap(({ corners }) => corners))]
  return [
    `${strategy}: ${grouped(evaluations)} ${runs}, ${borders.length} borders; an island narrower than 1/${Math.round(1 / hidden)} of either range may hide`,
    ...lines.map((line) => `  |${line}|`),
    `  across ${x.path} ${x.from} to ${x.to}, up ${y.path} ${y.from} to ${y.to}`,
    `  ${present.map((each) => `${letterOf(each)} ${each === UNFIT ? `${done}, not as required` : each}`).join(', ')}`,
  ].join('\n')
}

const LETTERS: Record<string, string> = { missed: '-', unstable: '~', refused: '?', [UNFIT]: ':' }

/** A sign for each class: the first letter of a verdict that none before it has. */
function lettersOf(job: JobId): Map<string, string> {
  const { verdicts, well } = JOBS[job]
  const letters = new Map(Object.entries({ ...LETTERS, [well]: '.' }))
  for (const verdict of verdicts) {
    if (letters.has(verdict)) continue
    const taken = [...letters.values()]
    letters.set(verdict, [...verdict].find((letter) => !taken.includes(letter)) ?? verdict.charAt(0))
  }
  return letters
}
