/**
 * The first to run, and small: simulators start, then the scenario is put on the bench and its first grips are asked for, and while
 * these run the page itself is drawn over the frame that stands in index.html.
 */
import './style/index.css'
import './shell/shell.css'
import './ui/chart.css'
import { simulatorCount, startEarly } from './worker/simulators.ts'

startEarly(simulatorCount())
const { startBench } = await import('./store/start.ts')
/** Null, or what went wrong. */
const started = startBench().then(
  () => null,
  (error: unknown) => error,
)
const { drawPage } = await import('./page.tsx')
const root = document.getElementById('root')!
const failed = await started
if (failed === null) drawPage(root)
else {
  root.setAttribute('role', 'alert')
  root.textContent = `What was on the bench could not be fetched. Nothing of it is lost: load the page again. What the browser said: ${failed}`
}
