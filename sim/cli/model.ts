import { modelReport } from '../ask/model/report.ts'
import { modelTable, spokenModel } from '../say/model-table.ts'
import { wordingOf } from '../say/wording.ts'
import { type Command, QUESTION_USAGE, refusing } from './command.ts'
import { run } from './core.ts'
import { questionOf } from './input.ts'
import { print, printJson } from './output.ts'

export const model: Command = {
  id: 'model',
  takes: QUESTION_USAGE,
  does: 'what the model leaves out, and how far off it can be for that',
  run(args) {
    const { scenario, strategy, json } = questionOf(args)
    const SI = wordingOf('si')
    const report = refusing(() => modelReport(scenario, strategy, run))
    const told = spokenModel(report, SI)
    if (json) printJson({ format: 'jawbench-model', version: 1, ...told })
    else print(modelTable(told, SI))
    return 0
  },
}
