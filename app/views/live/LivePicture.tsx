import { Suspense } from 'react'
import { laneSizes } from '../../read/stage/laneSize.ts'
import { useLive } from '../../store/live.ts'
import { useScenario } from '../../store/scenario.ts'
import { useWidth } from '../../ui/useWidth.ts'
import { lookOf } from './jobs.ts'

/** The machine at the newest sample. */
export function LivePicture() {
  const [element, width] = useWidth<HTMLDivElement>()
  return (
    <div ref={element} className="live-picture" style={{ minHeight: width > 0 ? sizeOf(width).height : undefined }}>
      {width > 0 && (
        <Suspense fallback={null}>
          <Moving {...sizeOf(width)} />
        </Suspense>
      )}
    </div>
  )
}

/** Lower than a picture on the bench, so that the traces stay in sight under it [px]. */
const HIGHEST = 230

function sizeOf(width: number) {
  const { alone } = laneSizes(width, 1)
  return { ...alone, height: Math.min(alone.height, HIGHEST) }
}

function Moving(size: { width: number; height: number }) {
  const scenario = useScenario((state) => state.scenario)
  const state = useLive((live) => live.now?.state ?? null)
  const { Picture } = lookOf(scenario)
  return <Picture {...{ scenario, state }} {...size} />
}
