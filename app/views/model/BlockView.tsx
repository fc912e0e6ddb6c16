import type { Block } from './section.ts'

/** The MathML in it is what the build made of our own TeX. */
export function BlockView({ block: { kind, html } }: { block: Block }) {
  const inner = { __html: html }
  return kind === 'equation' ? (
    <div className="equation" dangerouslySetInnerHTML={inner} />
  ) : (
    <p dangerouslySetInnerHTML={inner} />
  )
}
