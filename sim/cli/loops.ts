import { analyseLoops, type LoopsResult } from '../loops/analyse.ts'
import { loopModels, responseCsv } from '../loops/models.ts'
import { inPlainSpaces } from '../say/figure.ts'
import { frictionNote, missingLoops } from '../say/loops.ts'
import { loopsTable, rowOf } from '../say/loops-table.ts'
import { wordingOf } from '../say/wording.ts'
import { type Command, isJson, numberOf, optionsOf, refusing, SCENARIO_OPTIONS, SCENARIO_USAGE } from './command.ts'
import { readScenario } from './input.ts'
import { print, printJson, writeOut } from './output.ts'

export const loops: Command = {
  id: 'loops',
  takes: `FILE [--spread SHARE] [--force EFFORT] ${SCENARIO_USAGE} [--models OUT.json] [--response OUT.csv]`,
  does: 'margins of the four loops before the touch, on the softest, nominal and stiffest work, and where else a job has reason to look; as files, every loop as matrices, poles and zeros, and its frequency response',
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
