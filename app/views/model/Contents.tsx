import type { MouseEvent, ReactNode } from 'react'
import type { JobId } from '../../../sim/index.ts'
import { useNarrow } from '../../ui/useNarrow.ts'
import { sectionsOf } from './sections/index.ts'

const anchor = (id: string) => `model-${id}`

/** Everything that has a heading, in the order in which it stands. */
export const headingsOf = (job: JobId) => [
  { id: 'limits', title: 'Not to be used for' },
  ...sectionsOf(job),
  { id: 'simplifications', title: 'What is simplified, and how far off that can be' },
  { id: 'fixed', title: 'Fixed figures' },
  { id: 'sources', title: 'Sources' },
]

/** A heading that the contents lead to. */
export function HeadingAt({ id, children }: { id: string; children: ReactNode }) {
  return (
    <h2 id={anchor(id)} tabIndex={-1}>
      {children}
    </h2>
  )
}

/** The address holds the scenario, so the way to a heading is not written into it. */
function go(event: MouseEvent, id: string) {
  event.preventDefault()
  const heading = document.getElementById(anchor(id))
  heading?.scrollIntoView({ block: 'start' })
  heading?.focus({ preventScroll: true })
}

export function Contents({ job }: { job: JobId }) {
  const narrow = useNarrow()
  const list = (
    <ol>
      {headingsOf(job).map(({ id, title }) => (
        <li key={id}>
          <a href={`#${anchor(id)}`} onClick={(event) => go(event, id)}>
            {title}
          </a>
        </li>
      ))}
    </ol>
  )
  return (
    <nav className="model-contents" aria-label="Contents">
      {narrow ? (
        <details>
          <summary>Contents</summary>
          {list}
        </details>
      ) : (
        list
      )}
    </nav>
  )
}
