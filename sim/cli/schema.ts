import { JOB_SCHEMAS, type JobId, publishedSchema } from '../scenario/index.ts'
import { type Command, oneOf, optionsOf } from './command.ts'
import { printJson } from './output.ts'

export const schema: Command = {
  id: 'schema',
  takes: '[JOB]',
  does: 'print the JSON Schema of a scenario file, of a grip or of another job',
  run(args) {
    const [job = 'grip'] = optionsOf(args, {}, 1).positionals
    printJson(publishedSchema(oneOf('schema', job, Object.keys(JOB_SCHEMAS) as JobId[])))
    return 0
  },
}
