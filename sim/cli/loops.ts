import { analyseLoops, type LoopsResult } from '../loops/analyse.ts'
import { loopModels, responseCsv } from '../loops/models.ts'
import { webLoops } from '../loops/web.ts'
import { inPlainSpaces } from '../say/figure.ts'
import { frictionNote, missingLoops } from '../say/loops.ts'
import { loopsTable, rowOf } from '../say/loops-table.ts'
import { WEB_LOOPS_NOTE, webLoopsTable } from '../say/web-loops.ts'
import { wordingOf } from '../say/wording.ts'
import type { Scenario } from '../scenario/index.ts'
import {
  type Command,
  isJson,
  numberOf,
  optionsOf,
  Refused,
  refusing,
  SCENARIO_OPTIONS,
  SCENARIO_USAGE,
} from './command.ts'
import { readScenario } from './input.ts'
import { print, printJson, writeOut } from './output.ts'

export const loops: Command = {
  id: 'loops',
  takes: `FILE [--spread SHARE] [--force NEWTONS] ${SCENARIO_USAGE} [--models OUT.json] [--response OUT.csv]`,
  does: 'margins of the four loops in free air and on the softest, nominal and stiffest part; as files, every loop as matrices, poles and zeros, and its frequency response',
  run(args) {
    const known = {
      ...SCENARIO_OPTIONS,
      spread: { type: 'string' },
      force: { type: 'string' },
      models: { type: 'string' },
      response: { type: 'string' },
    } as const
    const { values, positionals } = optionsOf(args, known, 1)
    const scenario = readScenario(positionals[0], values.set, null)
    const json = isJson(values.format)
    if (scenario.job === 'web') return ofWeb(scenario, json)
    if (scenario.job !== 'grip') throw new Refused([`job: given "${scenario.job}", allowed "grip", "web"`])
    const looked = {
      spread: numberOf('--spread', values.spread),
      force: numberOf('--force', values.force),
      curves: values.response !== undefined,
    }
    const result = refusing(() => analyseLoops(scenario, looked))
    if (values.models !== undefined)
      writeOut('--models', values.models, JSON.stringify(loopModels(scenario, result, looked), null, 1))
    if (values.response !== undefined) writeOut('--response', values.response, responseCsv(result))
    if (json) printJson(report(result))
    else print(loopsTable(result, SI))
    return 0
  },
}

const SI = wordingOf('si')

function ofWeb(scenario: Scenario, json: boolean): number {
  const rows = refusing(() => webLoops(scenario))
  if (json) printJson({ format: 'jawbench-loops', version: 1, loops: rows, note: WEB_LOOPS_NOTE })
  else print(webLoopsTable(rows))
  return 0
}

function report(result: LoopsResult) {
  return {
    format: 'jawbench-loops',
    version: 1,
    workingPoints: result.workingPoints,
    loops: result.loops.map((loop) => rowOf(loop, SI)),
    friction: inPlainSpaces(frictionNote(result.friction, SI)),
    note: missingLoops(result),
  }
}
