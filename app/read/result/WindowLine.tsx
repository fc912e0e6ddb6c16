import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { windowWords } from './windowWords.ts'
import './windowLine.css'

/** The force window in one sentence, before anybody tunes. */
export function WindowLine() {
  const scenario = useScenario((state) => state.scenario)
  const units = useView((state) => state.units)
  const { title, sentence, empty } = windowWords(scenario, units)
  return (
    <p className="window-line" role={empty ? 'alert' : undefined} data-empty={empty || undefined}>
      <strong>{title}</strong> {sentence}
    </p>
  )
}
