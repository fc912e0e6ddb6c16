import { quantityUnit } from '../../read/units.ts'
import { useView } from '../../store/view.ts'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { armIsTold, useDraft, windowOf } from './draft.ts'

/** The force window of what was told so far. */
export function TheWindowLine() {
  const draft = useDraft()
  const units = useView((state) => state.units)
  const { least, most, known } = windowOf(draft)
  const { symbol, toShown } = quantityUnit('force', units)
  const force = (newtons: number) => withUnit(formatFigure(toShown(newtons)), symbol)
  const empty = least !== null && most !== null && least >= most
  const arm = armIsTold(draft) ? '' : ' with the arm at rest'
  const words = () => {
    if (!known.least && !known.most)
      return 'appears here as soon as mass and friction of the pads, or a limit of the part, are given.'
    if (empty)
      return `is empty: holding needs ${force(least)}${arm}, the part takes ${force(most)}. No axis and no tuning can help; another pad, move or part can.`
    if (least !== null && most !== null)
      return `${force(least)} to ${force(most)} at each contact${arm}: less drops the part, more damages it.`
    if (least !== null)
      return `from ${force(least)} at each contact${arm}: less drops the part; no limit of the part is given.`
    if (most !== null) return `up to ${force(most)} at each contact; what holds it needs mass and friction of the pads.`
    return 'is open: nothing pulls on the part, and no limit of it is given.'
  }
  return (
    <p className="new-job-window" role="status" data-empty={empty || undefined}>
      <strong>Force window</strong> {words()}
    </p>
  )
}
