import { analyseLoops } from '../loops/analyse.ts'
import { inPlainSpaces } from '../say/figure.ts'
import { frictionNote, missingLoops } from '../say/loops.ts'
import { loopsTable, rowOf } from '../say/loops-table.ts'
import { wordingOf } from '../say/wording.ts'
import { type Command, isJson, numberOf, optionsOf, refusing, SCENARIO_OPTIONS, SCENARIO_USAGE } from './command.ts'
import { readScenario } from './input.ts'
import { print, printJson } from './output.ts'

export const loops: Command = {
  id: 'loops',
  takes: `FILE [--spread SHARE] [--force NEWTONS] ${SCENARIO_USAGE}`,
  does: 'margins of the four loops in free air and on the softest, nominal and stiffest part',
  run(args) {
    const known = { ...SCENARIO_OPTIONS, spread: { type: 'string' }, force: { type: 'string' } } as const
    const { values, positionals } = optionsOf(args, known, 1)
    const scenario = readScenario(positionals[0], values.set)
    const json = isJson(values.format)
    const result = refusing(() =>
      analyseLoops(scenario, { spread: numberOf('--spread', values.spread), force: numberOf('--force', values.force) }),
    )
    const SI = wordingOf('si')
    const { workingPoints } = result
    const rows = result.loops.map((loop) => rowOf(loop, SI))
    const friction = inPlainSpaces(frictionNote(result.friction, SI))
    const note = missingLoops(result)
    if (json) printJson({ format: 'jawbench-loops', version: 1, workingPoints, loops: rows, friction, note })
    else print(loopsTable(result, SI))
    return 0
  },
}
