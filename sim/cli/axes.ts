import { type ComparedAxis, compareAxes } from '../ask/compare-axes.ts'
import { wantedEffort } from '../ask/fit-axis.ts'
import { runnerOn } from '../ask/runner.ts'
import { jobOf } from '../job/index.ts'
import { fitnessWhy } from '../say/axes.ts'
import { inPlainSpaces } from '../say/figure.ts'
import { jobWords } from '../say/jobs.ts'
import { wordingOf } from '../say/wording.ts'
import { axesFor, faultLine, type Scenario } from '../scenario/index.ts'
import {
  type Command,
  figureText,
  isJson,
  oneOf,
  optionsOf,
  refusing,
  SCENARIO_OPTIONS,
  SCENARIO_USAGE,
} from './command.ts'
import { readScenario } from './input.ts'
import { print, printJson } from './output.ts'

const ALL = 'all'

export const axes: Command = {
  id: 'axes',
  takes: `FILE [--axis ID|${ALL}] ${SCENARIO_USAGE}`,
  does: 'which generic axis suits the job: what each can do, and what becomes of the work by each strategy',
  run(args, core) {
    const known = { ...SCENARIO_OPTIONS, axis: { type: 'string', default: ALL } } as const
    const { values, positionals } = optionsOf(args, known, 1)
    const json = isJson(values.format)
    const scenario = readScenario(positionals[0], values.set, null)
    const ids = axesFor(scenario.job).map(({ id }) => id)
    const asked = oneOf('--axis', values.axis, [ALL, ...ids])
    const wanted = asked === ALL ? undefined : asked
    const compared = refusing(() => [...compareAxes(scenario, runnerOn(core), wanted)])
    const effort = wantedEffort(scenario)
    if (json)
      printJson({ format: 'jawbench-axes', version: 1, wanted: effort, axes: compared.map(told(scenario, wanted)) })
    else print(axesTable(scenario, compared, effort))
    return 0
  },
}

/** All figures of an axis, and where it is the only one that was asked about the scenario with it. */
const told =
  (scenario: Scenario, wanted: string | undefined) =>
  ({ id, title, report }: ComparedAxis) => {
    const { actuator, scenario: fitted, strategies, faults, ...figures } = report
    return {
      id,
      title,
      kind: actuator.kind,
      family: actuator.family,
      ...figures,
      faults: faults.map(faultLine),
      strategies: strategies.map((fitness) => ({
        strategy: fitness.strategy,
        verdict: fitness.result?.verdict ?? null,
        overloads: fitness.result?.overloads ?? [],
        honest: fitness.honest,
        why: inPlainSpaces(fitnessWhy(scenario, fitness, wordingOf('si'))),
      })),
      ...(id === wanted && { scenario: fitted }),
    }
  }

export function axesTable(scenario: Scenario, compared: ComparedAxis[], wanted: number): string {
  const { output } = jobOf(scenario)
  const { axes: words } = jobWords(scenario)
  const { effort, travel } = output
  const strategies = compared[0]?.report.strategies.map(({ strategy }) => strategy) ?? []
  const rows = [
    [
      'id',
      `continuous [${effort}]`,
      `peak [${effort}]`,
      `friction ± [${effort}]`,
      `impact [${effort}]`,
      `moving [${travel === 'rad' ? 'kg·m²' : 'kg'}]`,
      `top speed [${travel}/s]`,
      'power loss',
      ...strategies,
    ],
    ...compared.map(({ id, report }) => [
      id,
      ...[report.continuous, report.peak, report.frictionBand, report.impact, report.movingMass, report.topSpeed].map(
        (value) => figureText(value, 3),
      ),
      report.powerLoss,
      ...report.strategies.map(({ result }) =>
        result ? `${result.verdict}${result.overloads.length > 0 ? ', overloaded' : ''}` : '—',
      ),
    ]),
  ]
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)))
  const line = (row: string[]) =>
    row.map((cell, column) => (column === 0 ? cell.padEnd(widths[0]!) : cell.padStart(widths[column]!))).join('  ')
  return [
    `${words.asks} Each is fitted to the ${words.wanted} that the file wants, ${figureText(wanted, 3)} ${effort}; generic data, no maker’s.`,
    ...rows.map((row) => line(row).trimEnd()),
    ...compared.flatMap(({ id, report }) =>
      report.scenario
        ? []
        : [`${id}: does not go with the rest of the file, ${report.faults.map(faultLine).join('; ')}`],
    ),
  ].join('\n')
}
