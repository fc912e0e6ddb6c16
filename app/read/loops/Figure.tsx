import { formatFigure } from '../../ui/format.ts'
import { UnitText } from '../../ui/Symbols.tsx'

interface Told {
  unit: string
  /** [rad/s]: Hz stand beside. */
  frequency?: boolean | undefined
}

/** The unit in a heading, `rad/s (Hz)` for a frequency. */
export const FigureUnit = ({ unit, frequency }: Told) => <UnitText symbol={frequency ? `${unit} (Hz)` : unit} />

/** A figure of a loop, with Hz in brackets behind a frequency. */
export function LoopFigure({ value, frequency }: { value: number | null } & Pick<Told, 'frequency'>) {
  if (value === null || !frequency || !Number.isFinite(value)) return formatFigure(value)
  return (
    <span className="loop-frequency">
      {formatFigure(value)} <span className="unit">({formatFigure(value / (2 * Math.PI))})</span>
    </span>
  )
}
