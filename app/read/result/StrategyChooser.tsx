import { STRATEGIES } from '../../../sim/index.ts'
import { useView } from '../../store/view.ts'
import './strategyChooser.css'

/** Which strategies are run and shown. */
export function StrategyChooser() {
  const { shown, set } = useView()
  return (
    <fieldset className="strategy-chooser">
      <legend>Strategies shown</legend>
      {STRATEGIES.map(({ id, label }) => (
        <label key={id} className="toggle">
          <input
            type="checkbox"
            checked={shown.includes(id)}
            onChange={({ target }) =>
              set({ shown: target.checked ? [...shown, id] : shown.filter((each) => each !== id) })
            }
          />
          {label}
        </label>
      ))}
    </fieldset>
  )
}
