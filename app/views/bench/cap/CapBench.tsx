import { CapLane } from '../../../read/cap/CapLane.tsx'
import { TorqueOverAngle } from '../../../read/cap/TorqueOverAngle.tsx'
import { JobBench } from '../JobBench.tsx'

const MAIN = ['peakTorque', 'applicationTorque', 'overshoot', 'torqueMargin', 'seatAngle', 'removalAfter']

export const CapBench = () => <JobBench main={MAIN} Lane={CapLane} Chart={TorqueOverAngle} />
