import { ForceOverDepth } from '../../../read/press/ForceOverDepth.tsx'
import { PressLane } from '../../../read/press/PressLane.tsx'
import { JobBench } from '../JobBench.tsx'

const MAIN = ['peakForce', 'seatForce', 'depth', 'bandMargin', 'pressTime', 'springBack']

export const PressBench = () => <JobBench main={MAIN} Lane={PressLane} Chart={ForceOverDepth} />
