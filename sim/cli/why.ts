/** `jawbench why`: what made the force, cause by cause. */
import type { Cause, Why } from '../ask/why.ts'
import { inPlainSpaces } from '../say/figure.ts'
import { whyRule, whySentence } from '../say/why.ts'
import { wordingOf } from '../say/wording.ts'
import type { Scenario } from '../scenario/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import { figureText } from './figure.ts'

export function whyJson(scenario: Scenario, strategy: StrategyId, why: Why): string {
  const { run: _, ...shown } = why
  const sentence = said(scenario, strategy, why)
  return JSON.stringify(
    { format: 'jawbench-why', version: 1, strategy, ...shown, sentence, rule: whyRule(why) },
    null,
    2,
  )
}

export function whyTable(scenario: Scenario, strategy: StrategyId, why: Why): string {
  const { figure, force, causes, untold } = why
  const whole = figure === 'peak' ? 'Peak force' : 'Force at its weakest'
  return [
    said(scenario, strategy, why),
    ...(force === null
      ? []
      : [
          row('', 'force', 'share', 'alone … last'),
          ...causes.map((cause) => row(cause.label, newtons(cause), percent(cause.share), range(cause))),
          row(whole, `${figureText(force)} N`, force > 0 ? '100 %' : '', ''),
          whyRule(why),
        ]),
    ...untold.map(
      ({ label, verdict }) => `Could not be taken away: ${label}${verdict ? `, ${verdict} without it` : ''}.`,
    ),
  ].join('\n')
}

const said = (scenario: Scenario, strategy: StrategyId, why: Why) =>
  inPlainSpaces(whySentence(scenario, strategy, why, wordingOf('si')))

const row = (label: string, force: string, share: string, range: string) =>
  `${label.padEnd(42)}${force.padStart(18)}${share.padStart(10)}${range.padStart(26)}`.trimEnd()

const newtons = ({ force, error }: Cause) =>
  `${figureText(force)} N${error === null ? '' : ` ± ${figureText(error, 2)}`}`

const percent = (share: number | null) => (share === null ? '' : `${figureText(100 * share)} %`)

const range = ({ cause, alone, last }: Cause) =>
  cause === 'setting' || cause === 'rest' ? '' : `${figureText(alone)} … ${figureText(last)} N`
