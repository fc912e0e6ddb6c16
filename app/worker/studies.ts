/** The studies that page and study worker know: what each takes and what it hands out piece by piece. */
import { type ComparedAxis, compareAxes, type Scenario } from '../../sim/index.ts'

export interface Studies {
  axes: { input: Scenario; item: ComparedAxis }
}

export type StudyName = keyof Studies

export const STUDIES: { [S in StudyName]: (input: Studies[S]['input']) => Iterable<Studies[S]['item']> } = {
  axes: compareAxes,
}

export interface StudyRequest<S extends StudyName = StudyName> {
  study: S
  input: Studies[S]['input']
}

export type StudyAnswer = { kind: 'item'; item: unknown } | { kind: 'done' } | { kind: 'failed'; message: string }
