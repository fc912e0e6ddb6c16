import { TensionOverTime } from '../../../read/web/TensionOverTime.tsx'
import { WebLane } from '../../../read/web/WebLane.tsx'
import { JobBench } from '../JobBench.tsx'

const MAIN = ['leastTension', 'mostTension', 'tensionRipple', 'slackMargin', 'stretchMargin', 'draw']

export const WebBench = () => <JobBench main={MAIN} Lane={WebLane} Chart={TensionOverTime} />
