import { modelReport, modelTable } from '../study/model/table.ts'
import { type Command, QUESTION_USAGE, refusing } from './command.ts'
import { questionOf } from './input.ts'
import { print, printJson } from './output.ts'

export const model: Command = {
  id: 'model',
  takes: QUESTION_USAGE,
  does: 'what the model leaves out, and how far off it can be for that',
  run(args) {
    const { scenario, strategy, json } = questionOf(args)
    const told = refusing(() => modelReport(scenario, strategy))
    if (json) printJson({ format: 'jawbench-model', version: 1, ...told })
    else print(modelTable(told))
    return 0
  },
}
