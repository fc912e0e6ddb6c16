import { simulateGrip } from '../grip/simulate.ts'
import { explain, type Why } from '../grip/why.ts'
import { type Command, figureText, QUESTION_USAGE, refusing } from './command.ts'
import { questionOf } from './input.ts'
import { print, printJson } from './output.ts'

export const why: Command = {
  id: 'why',
  takes: QUESTION_USAGE,
  does: 'what made the force, cause by cause',
  run(args) {
    const { scenario, strategy, json } = questionOf(args)
    const told = refusing(() => {
      const { verdict } = simulateGrip(scenario, strategy, { stepError: true }).result
      return explain(scenario, strategy, verdict)
    })
    const { run: _, ...shown } = told
    if (json) printJson({ format: 'jawbench-why', version: 1, strategy, ...shown })
    else print(table(told))
    return 0
  },
}

function table({ sentence, figure, force, causes, rule, untold }: Why): string {
  const whole = figure === 'peak' ? 'Peak force' : 'Force at its weakest'
  return [
    sentence,
    ...causes.map((cause) => line(cause.label, cause.force, cause.share)),
    ...(force === null ? [] : [line(whole, force, 1), rule]),
    ...untold.map(
      ({ label, verdict }) => `Could not be taken away: ${label}${verdict ? `, ${verdict} without it` : ''}.`,
    ),
  ].join('\n')
}

const line = (label: string, force: number, share: number | null) =>
  `${label.padEnd(42)}${`${figureText(force)} N`.padStart(12)}${`${figureText(share === null ? null : 100 * share)} %`.padStart(10)}`
