import type { ReactNode } from 'react'
import { useFolds } from './folds.ts'

interface FoldProps {
  id: string
  title: string
  /** Stands for the content while it is folded. */
  line?: string
  level: 'section' | 'group'
  children: ReactNode
}

/** A part of the panel that folds away; only an open one is built. */
export function Fold({ id, title, line, level, children }: FoldProps) {
  const open = useFolds((folds) => folds.open.includes(id))
  const set = useFolds((folds) => folds.set)
  return (
    <details className={`fold fold-${level}`} open={open} onToggle={(event) => set(id, event.currentTarget.open)}>
      <summary>
        <span className="fold-title">{title}</span>
        {!open && line && <span className="fold-line">{line}</span>}
      </summary>
      {open && <div className="fold-body">{children}</div>}
    </details>
  )
}
