import { type LoopAnalysis, type LoopId, type LoopsResult, loopModels, responseCsv } from '../../../sim/index.ts'
import { loopLabel } from '../../read/loops/lines.ts'
import { download, fileName } from '../../store/file.ts'
import { useScenario } from '../../store/scenario.ts'
import { Button } from '../../ui/Button.tsx'

interface Props {
  loop: LoopId
  result: LoopsResult
  analyses: LoopAnalysis[]
}

/** The shown loop at all working points, to be taken on in a notebook. */
export function Export({ loop, result: { workingPoints }, analyses }: Props) {
  const scenario = useScenario((state) => state.scenario)
  const save = (text: string, type: string, name: string) =>
    download(new Blob([text], { type }), `${fileName(scenario.name)}-${loop}-loop-${name}`)
  const label = `${loopLabel(loop, scenario.job)} loop`
  return (
    <section className="loops-export" aria-label="For a notebook">
      <h2>For a notebook</h2>
      <p className="loops-small">
        {label} at every working point, cut open: A, B, C, D, sample period, poles and zeros in one file; the frequency
        response, one row a frequency, in the other. In SI.
      </p>
      <p className="loops-save">
        <Button
          onClick={() =>
            save(
              JSON.stringify(loopModels(scenario, { workingPoints, loops: analyses }), null, 1),
              'application/json',
              'models.json',
            )
          }
        >
          Matrices, poles, zeros (JSON)
        </Button>
        <Button onClick={() => save(responseCsv({ loops: analyses }), 'text/csv', 'response.csv')}>
          Frequency response (CSV)
        </Button>
      </p>
    </section>
  )
}
