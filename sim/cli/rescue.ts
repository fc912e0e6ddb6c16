import { type Rescue, rescues, sortRescues } from '../ask/rescue.ts'
import { runnerOn } from '../ask/runner.ts'
import { runAfter } from '../ask/spread/after.ts'
import type { Gained } from '../ask/spread/tighten.ts'
import { JOBS } from '../job/index.ts'
import { inPlainSpaces } from '../say/figure.ts'
import { costWords, rescueSentence } from '../say/rescue.ts'
import { afterSentence } from '../say/spread.ts'
import { wordingOf } from '../say/wording.ts'
import { type JobId, Refusal, type Scenario } from '../scenario/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import { type Command, figureText, QUESTION_USAGE, Refused, refusing } from './command.ts'
import { crew } from './crew.ts'
import { questionOf } from './input.ts'
import { print, printJson } from './output.ts'
import { progressOf, searchedBy } from './progress.ts'

/** Parts that every change is tried on where the file has a spread. */
const PARTS = 200

export const rescue: Command = {
  id: 'rescue',
  takes: QUESTION_USAGE,
  does: 'changes of one parameter that save the work, the cheapest first, or how far a held one may drift',
  async run(args, core) {
    const run = runnerOn(core)
    const { scenario, strategy, json } = questionOf(args, null)
    const { verdict } = refusing(() => run(scenario, strategy)).result
    const found = refusing(() =>
      sortRescues(
        scenario.job,
        searchedBy('search for changes', rescues(scenario, strategy, run)).map(({ rescue }) => rescue),
      ),
    )
    const words = wordingOf('si')
    const parts = await sharesOf(scenario, strategy, found)
    const told = found.map((each, at) => ({
      ...each,
      sentence: inPlainSpaces(rescueSentence(scenario, each, words)),
      parts: parts[at] ?? null,
    }))
    if (json) printJson({ format: 'jawbench-rescue', version: 1, strategy, verdict, rescues: told })
    else print(rescueTable(scenario.job, verdict, told))
    return 0
  },
}

/** Of each change how many of the parts it holds; null where nothing varies or nothing is changed. */
async function sharesOf(scenario: Scenario, strategy: StrategyId, found: Rescue[]): Promise<(Gained | null)[]> {
  const changes = found.filter(({ value }) => value !== null)
  if (scenario.spread.varies.length === 0 || changes.length === 0) return found.map(() => null)
  const progress = progressOf('how many parts each change holds')
  const edits = changes.map(({ path, value, along }) => [{ path, value }, ...along])
  try {
    const question = { scenario, strategy, grips: PARTS, seed: 1 }
    const shares = await runAfter(question, edits, crew, (done) => progress.tell(done))
    return found.map((each) => shares[changes.indexOf(each)] ?? null)
  } catch (error) {
    if (error instanceof Refusal) throw new Refused([error.message])
    throw error
  } finally {
    progress.end()
  }
}

type Told = Rescue & { sentence: string; parts?: Gained | null }

export function rescueTable(job: JobId, verdict: string, told: Told[]): string {
  const { well } = JOBS[job]
  const { seeds } = told[0] ?? {}
  const head =
    verdict === well
      ? `${well}${seeds ? `, with ${seeds.held} of ${seeds.of} seeds of the noise` : ''}; each parameter, how far it may drift:`
      : `${verdict}; each parameter, changed alone, what it costs and what it does:`
  return [head, ...told.map((each) => line(job, each))].join('\n')
}

function line(job: JobId, rescue: Told): string {
  const { path, from, value, becomes, cost, along, sentence, parts } = rescue
  const change = `${figureText(from)}${value === null ? '' : ` → ${figureText(value)}`}`
  const others = along.map((edit) => `, with ${edit.path} ${figureText(edit.value as number)}`).join('')
  const price = becomes === JOBS[job].well ? ` (${costWords(job, cost)}${others})` : ''
  return `${`${path.padEnd(40)} ${change.padEnd(22)}${price}`.trimEnd()}\n    ${sentence}${parts ? `\n    ${afterSentence(job, parts, PARTS)}` : ''}`
}
