import { type Rescue, rescues, sortRescues } from '../ask/rescue.ts'
import { type Command, figureText, QUESTION_USAGE, refusing } from './command.ts'
import { run } from './core.ts'
import { questionOf } from './input.ts'
import { print, printJson } from './output.ts'

export const rescue: Command = {
  id: 'rescue',
  takes: QUESTION_USAGE,
  does: 'least change of each parameter that saves the part, or that loses a held one',
  run(args) {
    const { scenario, strategy, json } = questionOf(args)
    const { verdict } = refusing(() => run(scenario, strategy)).result
    const found = refusing(() => sortRescues([...rescues(scenario, strategy, run)].map((progress) => progress.rescue)))
    if (json) printJson({ format: 'jawbench-rescue', version: 1, strategy, verdict, rescues: found })
    else
      print(
        [verdict === 'held' ? 'held; lost from here on:' : `${verdict}; held from here on:`, ...found.map(line)].join(
          '\n',
        ),
      )
    return 0
  },
}

function line({ path, from, value, becomes, along, tried }: Rescue): string {
  const tail =
    value === null
      ? `  none from ${figureText(tried[0])} to ${figureText(tried[1])}`
      : `  ${[becomes, ...along.map((edit) => `with ${edit.path} ${figureText(edit.value as number)}`)].join(', ')}`
  return `${path.padEnd(42)}${figureText(from).padStart(12)}${figureText(value).padStart(12)}${tail}`
}
