import { formatFigure } from '../../ui/format.ts'

/** How much slower the play is than what it shows. `slow`: play seconds for each simulated second. */
export function paceText(slow: number): string {
  if (slow > 1.05) return `slowed ${formatFigure(slow, 2)}×`
  return slow < 0.95 ? `${formatFigure(1 / slow, 2)}× as fast` : 'real time'
}
