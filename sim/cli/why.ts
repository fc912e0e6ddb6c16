import { runnerOn } from '../ask/runner.ts'
import { type Cause, explain, type Why } from '../ask/why.ts'
import { jobOf } from '../job/index.ts'
import { inPlainSpaces } from '../say/figure.ts'
import { whyFigure } from '../say/jobs.ts'
import { whyRule, whySentence } from '../say/why.ts'
import { wordingOf } from '../say/wording.ts'
import { type Command, figureText, QUESTION_USAGE, refusing } from './command.ts'
import { questionOf } from './input.ts'
import { print, printJson } from './output.ts'

export const why: Command = {
  id: 'why',
  takes: QUESTION_USAGE,
  does: 'what made the force, cause by cause',
  run(args, core) {
    const { scenario, strategy, json } = questionOf(args, null)
    const run = runnerOn(core)
    const told = refusing(() => explain(scenario, strategy, run(scenario, strategy).result.verdict, run))
    const sentence = inPlainSpaces(whySentence(scenario, told, wordingOf('si')))
    const { run: _, job: __, ...shown } = told
    if (json) printJson({ format: 'jawbench-why', version: 1, strategy, ...shown, sentence, rule: whyRule(told) })
    else print(whyTable(told, sentence))
    return 0
  },
}

export function whyTable(why: Why, sentence: string): string {
  const { force, causes, untold } = why
  const unit = jobOf(why).output.effort
  return [
    sentence,
    ...(force === null
      ? []
      : [
          row('', 'force', 'share', 'alone … last'),
          ...causes.map((cause) => row(cause.label, effort(cause, unit), percent(cause.share), range(cause, unit))),
          row(whyFigure(why).whole, `${figureText(force)} ${unit}`, force > 0 ? '100 %' : '', ''),
          whyRule(why),
        ]),
    ...untold.map(
      ({ label, verdict }) => `Could not be taken away: ${label}${verdict ? `, ${verdict} without it` : ''}.`,
    ),
  ].join('\n')
}

const row = (label: string, force: string, share: string, range: string) =>
  `${label.padEnd(42)}${force.padStart(18)}${share.padStart(10)}${range.padStart(26)}`.trimEnd()

const effort = ({ force, error }: Cause, unit: string) =>
  `${figureText(force)} ${unit}${error === null ? '' : ` ± ${figureText(error, 2)}`}`

const percent = (share: number | null) => (share === null ? '' : `${figureText(100 * share)} %`)

const range = ({ cause, alone, last }: Cause, unit: string) =>
  cause === 'setting' || cause === 'rest' ? '' : `${figureText(alone)} … ${figureText(last)} ${unit}`
