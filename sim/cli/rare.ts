import { type RareGrips, runRare } from '../ask/spread/run-rare.ts'
import { jobWords } from '../say/jobs.ts'
import { rareSentences } from '../say/rare.ts'
import { grouped } from '../say/spread.ts'
import { editScenario, type JobId, Refusal, type Scenario } from '../scenario/index.ts'
import {
  type Command,
  isJson,
  optionsOf,
  Refused,
  SCENARIO_OPTIONS,
  SCENARIO_USAGE,
  strategyNamed,
  wholeOf,
} from './command.ts'
import { crew } from './crew.ts'
import { readScenario } from './input.ts'
import { print, printJson } from './output.ts'

export const rare: Command = {
  id: 'rare',
  takes: `FILE --strategy ID [--seed S] [--level N] ${SCENARIO_USAGE}`,
  does: 'how rare a failure is that plain sampling would hardly meet, and the likeliest way to it',
  async run(args) {
    const known = {
      ...SCENARIO_OPTIONS,
      strategy: { type: 'string', default: '' },
      seed: { type: 'string' },
      level: { type: 'string' },
    } as const
    const { values, positionals } = optionsOf(args, known, 1)
    const strategy = strategyNamed(values.strategy)
    const json = isJson(values.format)
    const seed = wholeOf('--seed', values.seed, 0, 2 ** 32 - 1) ?? 1
    const size = wholeOf('--level', values.level, 20, 1e6) ?? 500
    const scenario = readScenario(positionals[0], values.set, null)
    if (scenario.spread.varies.length === 0)
      throw new Refused(['spread.varies: given nothing that varies, allowed at least one quantity with its law'])
    const answer = await sought(
      runRare(scenario, { strategy, seed, size }, crew, tellGrips(jobWords(scenario).study.runs)),
    )
    if (json) printJson({ format: 'jawbench-rare', version: 1, strategy, seed, ...shown(scenario, answer) })
    else print(table(scenario.job, answer))
    return 0
  },
}

async function sought(search: Promise<RareGrips>): Promise<RareGrips> {
  try {
    return await search
  } catch (error) {
    if (error instanceof Refusal) throw new Refused([error.message])
    throw error
  }
}

/** A sign of life now and then: nobody knows how many it will be. */
function tellGrips(runs: string): (grips: number) => boolean {
  let next = 1000
  return (grips) => {
    if (grips >= next) process.stderr.write(`${grouped(grips)} ${runs}\n`)
    if (grips >= next) next = grips + 1000
    return true
  }
}

function shown(scenario: Scenario, { rare: found, grips, refused, likeliest }: RareGrips) {
  const edited = likeliest && editScenario(scenario, likeliest)
  return {
    kind: found.kind,
    share: found.share,
    variation: found.kind === 'share' ? found.variation : null,
    grips,
    refused,
    likeliest: edited?.ok ? edited.scenario : null,
    edits: likeliest,
  }
}

const table = (job: JobId, answer: RareGrips) =>
  [
    ...rareSentences(job, answer),
    ...(answer.likeliest
      ? ['The likeliest failure found:', ...answer.likeliest.map(({ path, value }) => `  --set ${path}=${value}`)]
      : []),
  ].join('\n')
