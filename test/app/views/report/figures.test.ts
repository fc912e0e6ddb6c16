import { describe, expect, it } from 'vitest'
import { causeRows, figureRows } from '../../../../app/views/report/figures.ts'
import { core, run } from '../../../../sim/cli/core.ts'
import {
  explain,
  finerScenarios,
  type GripResult,
  inPlainSpaces,
  jobOf,
  PRESETS,
  type Scenario,
  type StrategyId,
  simulateGrip,
  stepCheck,
  strategiesOn,
} from '../../../../sim/index.ts'
import { CAP_PRESETS, PRESS_PRESETS, WEB_PRESETS } from '../../../../sim/others.ts'
import { here } from '../../../cli/here.ts'
import { explained } from '../../../grip/remembered.ts'
import { reasonIn } from '../../../say/support.ts'

/** As the page runs it: the grip, then others at finer steps for the step error. */
function runOnPage(scenario: Scenario, strategy: StrategyId): GripResult {
  const { result } = simulateGrip(scenario, strategy, { core })
  const finer = finerScenarios(scenario, result).map((fine) => simulateGrip(fine, strategy, { core }).result)
  return { ...result, ...stepCheck(scenario, result, finer) }
}

async function commandLine(job: string, preset: string): Promise<string[]> {
  const { stdout } = await here(job, preset)
  return stdout.split('\n')
}

/** Without the minus that paper has. */
const plain = (text: string) => inPlainSpaces(text).replaceAll('\u2212', '-')

/** Those of gripping, and of every other job its last. */
const REPORTED = [...PRESETS, ...[PRESS_PRESETS, CAP_PRESETS, WEB_PRESETS].flatMap((presets) => presets.slice(-1))]

describe.each(REPORTED)('report of $id', ({ id, scenario }) => {
  const strategies = strategiesOn(jobOf(scenario))
  const results = strategies.map((strategy) => runOnPage(scenario, strategy.id))

  it('has the figures of the command line, to the last digit', async () => {
    const printed = await commandLine(scenario.job, id)
    for (const { metric, unit, cells } of figureRows(scenario, results, 'si')) {
      const label = metric.label.charAt(0).toLowerCase() + metric.label.slice(1)
      const head = `${label}${unit && ` [${unit}]`}`
      const row = printed.find((line) => line.startsWith(`${head} `))
      expect(row?.slice(head.length).trim().split(/\s+/), metric.id).toEqual(cells.map(inPlainSpaces))
    }
    for (const result of results) expect(printed).toContain(`${result.strategy}: ${reasonIn(scenario, result)}`)
    expect(
      printed
        .find((line) => line.startsWith('verdict'))
        ?.split(/\s+/)
        .slice(1),
    ).toEqual(results.map(({ verdict }) => verdict))
  })
})

/** Presses and closures take a hundred long runs each, and add up by the same rule. */
const TAKEN_APART = [...PRESETS, ...WEB_PRESETS.slice(-1)]

describe.each(TAKEN_APART)('report of $id', ({ scenario }) => {
  it('takes every effort apart into causes that add up as printed', () => {
    const whys = strategiesOn(jobOf(scenario)).map((strategy) => explained(scenario, strategy.id))
    const { rows, sums } = causeRows(scenario, whys, 'si')
    expect(rows.length).toBeGreaterThan(2)
    for (const [column, sum] of sums.entries()) {
      const parts = rows.map(({ cells }) => Number(plain(cells[column]!.force)))
      const unit = 10 ** -(plain(sum).split('.')[1]?.length ?? 0)
      const total = parts.reduce((left, part) => left + part, 0)
      expect(Math.abs(total - Number(plain(sum)))).toBeLessThanOrEqual(0.51 * unit * parts.length)
    }
  })
})

describe('figureRows', () => {
  it('gives dashes for a strategy that has no result', () => {
    for (const { cells } of figureRows(PRESETS[0]!.scenario, [null], 'us')) expect(cells).toEqual(['—'])
  })
})

describe('causeRows', () => {
  const why = (names: string[], force: number | null = 10) => ({
    ...explain(PRESETS[0]!.scenario, 'current-clamp', 'missed', run),
    force,
    causes: names.map((label) => ({
      cause: 'friction' as const,
      without: '',
      label,
      force: 10 / names.length,
      share: 1 / names.length,
      alone: null,
      last: null,
      error: null,
    })),
  })

  it('keeps the order that all strategies share', () => {
    const { rows } = causeRows(PRESETS[0]!.scenario, [why(['a', 'b', 'd', 'z']), why(['a', 'c', 'd', 'y', 'z'])], 'si')
    expect(rows.map(({ label }) => label)).toEqual(['a', 'c', 'b', 'd', 'y', 'z'])
    expect(rows.find(({ label }) => label === 'y')?.cells).toEqual([
      { force: '0', share: '0 %' },
      { force: '2.0', share: '20 %' },
    ])
  })

  it('has no rows where there is no force to take apart', () => {
    expect(causeRows(PRESETS[0]!.scenario, [null, why([], null)], 'si')).toEqual({ rows: [], sums: ['—', '—'] })
  })
})
