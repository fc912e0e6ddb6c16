import { exponentOf, type Scenario } from '../../../sim/index.ts'
import { BlockView } from './BlockView.tsx'
import { HeadingAt } from './Contents.tsx'
import { MetricNotes } from './MetricNotes.tsx'
import { StepErrors } from './StepErrors.tsx'
import { SymbolTable } from './SymbolTable.tsx'
import type { Section } from './section.ts'
import { SOURCES } from './sources.ts'
import { symbolRows } from './symbols.ts'

export function SectionView({ section, scenario }: { section: Section; scenario: Scenario }) {
  const { id, title, blocks, sources } = section
  const rows = symbolRows(section, scenario)
  return (
    <section aria-labelledby={`model-${id}`}>
      <HeadingAt id={id}>{title}</HeadingAt>
      {blocks.map((block, place) => (
        <BlockView key={place} block={block} />
      ))}
      {id === 'stepping' && <StepErrors />}
      {id === 'figures' && <MetricNotes />}
      {rows.length > 0 && <SymbolTable title={title} rows={rows} exponent={exponentOf(scenario)} />}
      {sources.length > 0 && (
        <p className="model-sources">
          Sources:{' '}
          {SOURCES.filter((source) => sources.includes(source.id))
            .map(({ text, memory }) => text + (memory ? ' From memory.' : ''))
            .join(' ')}
        </p>
      )}
    </section>
  )
}
