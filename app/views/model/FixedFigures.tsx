import { FIXED_FIGURES } from '../../../sim/index.ts'
import { HeadingAt } from './Contents.tsx'
import { SymbolTable } from './SymbolTable.tsx'

const ROWS = FIXED_FIGURES.map(({ label, ...figure }) => ({ ...figure, title: label, path: '', words: '' }))

export function FixedFigures() {
  return (
    <section aria-labelledby="model-fixed">
      <HeadingAt id="fixed">Fixed figures</HeadingAt>
      <p>No scenario sets these; they are part of the model.</p>
      <SymbolTable title="Fixed figures" rows={ROWS} exponent={1} />
    </section>
  )
}
