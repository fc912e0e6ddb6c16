/** One of the page's hands for studies of many grips: does one item after the other. */
import '../../sim/others.ts'
import { answering, runnerOn, type Telling } from '../../sim/index.ts'
import { newCore } from './core.ts'

declare const self: DedicatedWorkerGlobalScope

const core = newCore()
const answer = answering(runnerOn(core), core)

self.onmessage = ({ data }: MessageEvent<Telling>) => self.postMessage(answer(data))
