/** Sets a key that was left out; what it starts with is worked out by a file of its own, as on most visits none is set. */
import type { QuantitySchema } from '../../sim/index.ts'
import { useResults } from '../store/results.ts'
import { useScenario } from '../store/scenario.ts'
import { edit } from './refusal.ts'

/** `made` makes the new value of the key of what it starts with. */
export async function begin(path: string, schema?: QuantitySchema, made = (first: unknown): unknown => first) {
  const fetched = await import('./first.ts').catch(() => null)
  if (!fetched) return useResults.getState().say('What this starts with could not be fetched.')
  edit(path, made(fetched.firstValue(useScenario.getState().scenario, path, schema)))
}
