import { ALL_PRESETS } from '../scenario/index.ts'
import { type Command, optionsOf, Refused } from './command.ts'
import { print, printJson } from './output.ts'

export const presets: Command = {
  id: 'presets',
  takes: '[ID]',
  does: 'list the presets, or print one as a scenario file',
  run(args) {
    const [id] = optionsOf(args, {}, 1).positionals
    const preset = ALL_PRESETS.find((candidate) => candidate.id === id)
    if (preset) printJson(preset.scenario)
    else if (id !== undefined)
      throw new Refused([`presets: given "${id}", allowed ${ALL_PRESETS.map((each) => each.id).join(', ')}`])
    else print(ALL_PRESETS.map((each) => `${each.id.padEnd(12)}${each.title}. ${each.summary}`).join('\n'))
    return 0
  },
}
