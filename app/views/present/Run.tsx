import type { PointerEvent } from 'react'
import { type StrategyId, strategyOf } from '../../../sim/index.ts'
import { TimeSlider } from '../../read/stage/TimeBar.tsx'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Segments } from '../../ui/Choice.tsx'
import { Board } from './Board.tsx'
import { NoRun } from './NoRun.tsx'
import type { SlideProps } from './Present.tsx'
import { roomOf } from './story.ts'
import { useSize } from './useSize.ts'

/** The strategies side by side as they do the same work; or one of them on both axes. */
export function Run({ runs: all, beside, told: runs, onTell, axis, play, duration, text }: SlideProps) {
  const [element, size] = useSize<HTMLDivElement>()
  const scenario = useScenario((state) => state.scenario)
  const units = useView((state) => state.units)
  const time = useView((state) => state.time)
  const drag = (event: PointerEvent<HTMLDivElement>) => {
    if (event.type === 'pointermove' && !event.currentTarget.hasPointerCapture(event.pointerId)) return
    if (event.type === 'pointerdown') event.currentTarget.setPointerCapture(event.pointerId)
    const box = event.currentTarget.getBoundingClientRect()
    const { left, width } = roomOf(box, 0.85 * text)
    useView.getState().set({ time: axis.toTime((event.clientX - box.left - left) / width), playing: false })
  }
  return (
    <div className="present-run">
      {beside.length > 0 && all.length > 1 && (
        <Segments<StrategyId>
          bare
          label="Strategy"
          options={all.map(({ strategy }) => ({ value: strategy, label: strategyOf(strategy).label }))}
          value={runs[0]?.strategy ?? all[0]!.strategy}
          onChoose={onTell}
        />
      )}
      <div ref={element} className="present-fill">
        {size && runs.length > 0 && (
          <Board
            runs={runs}
            scenario={runs[0]?.scenario ?? scenario}
            lens={play.lens}
            axis={axis}
            units={units}
            time={Math.min(time, duration)}
            text={text}
            {...size}
            bar={(story) => (
              <TimeSlider axis={axis} play={play} duration={duration} onDrag={drag}>
                {story}
              </TimeSlider>
            )}
          />
        )}
        {runs.length === 0 && <NoRun />}
      </div>
    </div>
  )
}
