import { forceWindow } from '../../../../sim/index.ts'
import { useScenario } from '../../../store/scenario.ts'
import { useView } from '../../../store/view.ts'
import { formatFigure } from '../../../ui/format.ts'
import { quantityUnit } from '../../../ui/units.ts'

/** The force window in one sentence, before anybody tunes. */
export function WindowLine() {
  const scenario = useScenario((state) => state.scenario)
  const { symbol, toShown } = quantityUnit(
    'force',
    useView((state) => state.units),
  )
  const { least, most } = forceWindow(scenario)
  const force = (value: number) => `${formatFigure(toShown(value))} ${symbol}`
  if (least !== null && most !== null && least >= most)
    return (
      <p className="window-line" role="alert" data-empty>
        <strong>No grip force both holds and spares this part:</strong> holding needs at least {force(least)}, the part
        takes at most {force(most)}.
      </p>
    )
  return (
    <p className="window-line">
      <strong>Force window</strong> {sentence(least && force(least), most && force(most))}
    </p>
  )
}

function sentence(least: string | 0 | null, most: string | 0 | null): string {
  if (least && most) return `${least} to ${most} at each contact: less drops the part, more damages it.`
  if (least) return `from ${least} at each contact: less drops the part; it has no damage limit.`
  if (most) return `up to ${most} at each contact: nothing pulls on the part, more damages it.`
  return 'is open: nothing pulls on the part, and it has no damage limit.'
}
