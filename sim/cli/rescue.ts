import { type Rescue, rescues, sortRescues } from '../ask/rescue.ts'
import { runnerOn } from '../ask/runner.ts'
import type { Verdict } from '../job/grip/result.ts'
import { inPlainSpaces } from '../say/figure.ts'
import { COST_WORDS, rescueSentence } from '../say/rescue.ts'
import { wordingOf } from '../say/wording.ts'
import { type Command, figureText, QUESTION_USAGE, refusing } from './command.ts'
import { questionOf } from './input.ts'
import { print, printJson } from './output.ts'

export const rescue: Command = {
  id: 'rescue',
  takes: QUESTION_USAGE,
  does: 'changes of one parameter that save the part, the cheapest first, or how far a held one may drift',
  run(args, core) {
    const run = runnerOn(core)
    const { scenario, strategy, json } = questionOf(args)
    const { verdict } = refusing(() => run(scenario, strategy)).result
    const found = refusing(() => sortRescues([...rescues(scenario, strategy, run)].map(({ rescue }) => rescue)))
    const words = wordingOf('si')
    const told = found.map((each) => ({ ...each, sentence: inPlainSpaces(rescueSentence(scenario, each, words)) }))
    if (json) printJson({ format: 'jawbench-rescue', version: 1, strategy, verdict, rescues: told })
    else print(rescueTable(verdict, told))
    return 0
  },
}

type Told = Rescue & { sentence: string }

export function rescueTable(verdict: Verdict, told: Told[]): string {
  const { seeds } = told[0] ?? {}
  const head =
    verdict === 'held'
      ? `held${seeds ? `, with ${seeds.held} of ${seeds.of} seeds of the noise` : ''}; each parameter, how far it may drift:`
      : `${verdict}; each parameter, changed alone, what it costs and what it does:`
  return [head, ...told.map(line)].join('\n')
}

function line(rescue: Told): string {
  const { path, from, value, becomes, cost, along, sentence } = rescue
  const change = `${figureText(from)}${value === null ? '' : ` → ${figureText(value)}`}`
  const others = along.map((edit) => `, with ${edit.path} ${figureText(edit.value as number)}`).join('')
  const price = becomes === 'held' ? ` (${COST_WORDS[cost]}${others})` : ''
  return `${`${path.padEnd(40)} ${change.padEnd(22)}${price}`.trimEnd()}\n    ${sentence}`
}
