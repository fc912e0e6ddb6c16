import type { Varied } from '../../../sim/index.ts'
import { formatPlain } from '../../ui/format.ts'

/** "normal, 3 %" */
export function lawText({ law, share, sd, half, factor }: Varied): string {
  if (law === 'lognormal') return `lognormal, factor ${factor}`
  const size = sd ?? half ?? 0
  return `${law}, ${law === 'uniform' ? '±' : ''}${share ? `${formatPlain(100 * size, 3)} %` : formatPlain(size, 3)}`
}
