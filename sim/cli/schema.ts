import { publishedSchema } from '../scenario/index.ts'
import { type Command, optionsOf } from './command.ts'
import { printJson } from './output.ts'

export const schema: Command = {
  id: 'schema',
  takes: '',
  does: 'print the JSON Schema of a scenario file',
  run(args) {
    optionsOf(args, {}, 0)
    printJson(publishedSchema())
    return 0
  },
}
