import { modelReport } from '../ask/model/report.ts'
import { runnerOn } from '../ask/runner.ts'
import { modelTable, spokenModel } from '../say/model-table.ts'
import { wordingOf } from '../say/wording.ts'
import { type Command, QUESTION_USAGE, refusing } from './command.ts'
import { questionOf } from './input.ts'
import { print, printJson } from './output.ts'

export const model: Command = {
  id: 'model',
  takes: QUESTION_USAGE,
  does: 'what the model leaves out, and how far off it can be for that',
  run(args, core) {
    const { scenario, strategy, json } = questionOf(args, null)
    const SI = wordingOf('si')
    const report = refusing(() => modelReport(scenario, strategy, runnerOn(core)))
    const told = spokenModel(report, SI)
    if (json) printJson({ format: 'jawbench-model', version: 2, ...told })
    else print(modelTable(told, SI))
    return 0
  },
}
