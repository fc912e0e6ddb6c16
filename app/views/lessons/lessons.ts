/** Every lesson in the folder `data`, in the order of the file names; a file that is not sound comes with its faults. */
import { checkLesson, type Fault, type Lesson } from '../../../sim/index.ts'

export interface ListedLesson {
  /** File name without number and ending: stays the same when lessons are put in another order. */
  id: string
  file: string
  lesson: Lesson
}

export interface FaultyLesson {
  file: string
  faults: Fault[]
}

const files = import.meta.glob<unknown>('./data/*.json', { eager: true, import: 'default' })

const read = Object.entries(files)
  .sort(([a], [b]) => a.localeCompare(b))
  .map(([path, input]) => ({ file: path.replace(/^.*\//, ''), checked: checkLesson(input) }))

export const LESSONS: ListedLesson[] = read.flatMap(({ file, checked }) =>
  checked.ok ? [{ id: file.replace(/^\d+-|\.json$/g, ''), file, lesson: checked.lesson }] : [],
)

export const FAULTY: FaultyLesson[] = read.flatMap(({ file, checked }) =>
  checked.ok ? [] : [{ file, faults: checked.faults }],
)
