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
const started = startBench()
const { drawPage } = await import('./page.tsx')
await started
drawPage(document.getElementById('root')!)
