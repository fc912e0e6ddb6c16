/** The gripper in section at one instant: pure SVG, no physics. What stands still is drawn once, what moves is shifted. */
import './picture.css'
import { type CSSProperties, memo, useId, useMemo } from 'react'
import type { Scenario } from '../../../sim/index.ts'
import { Defs } from '../Defs.tsx'
import type { DrawingProps, FamilyDrawing, Label, Motion } from '../families/drawing.ts'
import { useDrawing } from '../families/registry.ts'
import { PaintContext, paintOf } from '../paint.ts'
import { Body } from './Body.tsx'
import { Forces, type FormatForce, ScaleBar } from './Forces.tsx'
import type { GripFrame } from './frameAt.ts'
import { Jaw, Pad } from './Jaw.tsx'
import { Magnifier } from './Magnifier.tsx'
import { motionOf } from './motion.ts'
import { Names } from './Names.tsx'
import { Part, restX } from './Part.tsx'
import { type Plan, planOf } from './plan.ts'
import { ArmArrow, Gravity, Support } from './Surroundings.tsx'
import { type ForceEdges, forceScale, type PictureScales } from './scales.ts'
import { Turn } from './Turn.tsx'

export interface GripperProps {
  frame: GripFrame
  scenario: Scenario
  width: number
  height: number
  /** What a screen reader says of the picture. */
  label: string
  /** Kept the same through a run and over all lanes; left out: this instant's own. */
  scales?: PictureScales | undefined
  window?: ForceEdges
  formatForce?: FormatForce
  /** The same for a round figure. */
  formatRound?: FormatForce | undefined
  /** Rounds a force down to one that reads well on the scale bar. */
  roundForce?: ((newtons: number) => number) | undefined
  /** Part names with leader lines. */
  names?: boolean
}

const NO_EDGES: ForceEdges = { least: null, most: null }
const newtons: FormatForce = (force) => `${force.toPrecision(3)} N`

export function Gripper(props: GripperProps) {
  const scenario = useDrawn(props.scenario)
  const drawing = useDrawing(scenario)
  if (drawing) return <Drawn {...props} scenario={scenario} drawing={drawing} />
  return <p style={{ width: props.width, height: props.height }}>The drawing of this axis could not be fetched.</p>
}

function Drawn(props: GripperProps & { drawing: FamilyDrawing }) {
  const {
    frame,
    scenario,
    drawing,
    width,
    height,
    label,
    window = NO_EDGES,
    formatForce = newtons,
    formatRound = formatForce,
    roundForce,
    names = false,
  } = props
  const picture = useId()
  const paint = useMemo(() => paintOf(picture), [picture])
  const plan = useMemo(
    () => planOf(scenario, { width, height, names }, drawing.length(scenario)),
    [scenario, width, height, names, drawing],
  )
  const scales = props.scales ?? ownScales(frame, window)
  const motion = motionOf(scenario, plan, frame)
  const perNewton = scales ? plan.arrow / scales.force : 0
  const greatest = useMemo(
    () => Math.max(1e-9, ...scenario.arm.moves.map((move) => Math.abs(move.acceleration))),
    [scenario],
  )
  return (
    <svg
      className="picture"
      style={{ '--line': plan.line } as CSSProperties}
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={label}
    >
      <PaintContext value={paint}>
        <Defs picture={picture} line={plan.line} />
        <g transform={`translate(${plan.origin.x.toFixed(2)} ${plan.origin.y.toFixed(2)})`}>
          <Still plan={plan} scenario={scenario} drawing={drawing} />
          {frame.supported && <Support plan={plan} />}
          <Jaws plan={plan} scenario={scenario} drawing={drawing} motion={motion} frame={frame} />
          <Part plan={plan} frame={frame} />
          <Forces plan={plan} frame={frame} perNewton={perNewton} window={window} format={formatForce} />
          <Gravity x={gravityX(plan)} y={plan.contactY + 24 * plan.u} gravity={scenario.arm.gravity} />
          <ArmArrow plan={plan} frame={frame} greatest={greatest} />
        </g>
        <Turn plan={plan} frame={frame} scenario={scenario} />
        {scales && <Scaled plan={plan} frame={frame} scales={scales} format={formatRound} round={roundForce} />}
        {names && <Names plan={plan} labels={labelsOf(plan, scenario, drawing)} travel={motion.travel} />}
      </PaintContext>
    </svg>
  )
}

interface ScaledProps {
  plan: Plan
  frame: GripFrame
  scales: PictureScales
  format: FormatForce
  round: GripperProps['roundForce']
}

/** The magnifier at the contact, and the scale of the force arrows beside it. */
function Scaled({ plan, frame, scales, format, round }: ScaledProps) {
  return (
    <>
      <Magnifier plan={plan} frame={frame} squeeze={scales.squeeze} />
      <ScaleBar
        x={plan.lens.x + plan.lens.r + 14}
        y={plan.height - 12}
        perNewton={plan.arrow / scales.force}
        longest={plan.arrow}
        format={format}
        round={round}
      />
    </>
  )
}

/** The scenario as it was when something that is drawn last changed: gains and speeds leave the drawing as it is. */
function useDrawn(scenario: Scenario): Scenario {
  const { actuator, jaws, part, arm } = scenario
  return useMemo(() => scenario, [actuator, jaws, part, arm])
}

/** Body and the fixed half of the drive. */
const Still = memo(function Still({ plan, scenario, drawing }: DrawingProps & { drawing: FamilyDrawing }) {
  return (
    <>
      <Body plan={plan} />
      <drawing.Fixed plan={plan} scenario={scenario} />
    </>
  )
})

interface JawsProps extends DrawingProps {
  drawing: FamilyDrawing
  motion: Motion
  frame: GripFrame
}

function Jaws({ plan, scenario, drawing, motion, frame }: JawsProps) {
  const { half, mirrored, m } = plan
  const slots = useMemo(() => drawing.slots?.({ plan, scenario }), [drawing, plan, scenario])
  const driven = `translate(${(-half + motion.travel).toFixed(2)} 0)`
  const far = mirrored
    ? `translate(${(half - motion.travel).toFixed(2)} 0) scale(-1 1)`
    : `translate(${half} 0) scale(-1 1)`
  return (
    <>
      <g transform={driven}>
        <Jaw plan={plan} slot={slots?.driven} />
        <Pad plan={plan} given={frame.contacts.driven.pad * m} />
      </g>
      <g transform={far}>
        {mirrored && <Jaw plan={plan} slot={slots?.far} />}
        <Pad plan={plan} given={frame.contacts.far.pad * m} />
      </g>
      <drawing.Moving plan={plan} scenario={scenario} motion={motion} />
    </>
  )
}

/** Gravity stands right of the jaws, below the far force. */
const gravityX = (plan: Plan) => (plan.mirrored ? plan.right - 10 * plan.u : plan.half + 34 * plan.u)

/** Scales from one instant; none while nothing is touched. */
function ownScales(frame: GripFrame, window: ForceEdges): PictureScales | null {
  if (frame.contacts.driven.overlap <= 0) return null
  const forces = [frame.force, frame.farForce]
  return { force: forceScale(forces, forces, window), squeeze: frame.contacts.driven.overlap }
}

function labelsOf(plan: Plan, scenario: Scenario, drawing: FamilyDrawing): Label[] {
  const { u, half, contactY, padHalf, mirrored, partWidth, partHeight } = plan
  const side = mirrored ? 'far' : undefined
  const onFar = side ? ({ rides: side } as const) : {}
  return [
    ...drawing.labels({ plan, scenario }),
    { text: 'guide rail', x: plan.wallRight - 8 * u, y: -31 * u },
    { text: 'carriage', x: half + 18 * u, y: -18 * u, ...onFar },
    { text: 'finger', x: half + 9 * u, y: contactY - padHalf - 2 * u, ...onFar },
    { text: 'pad', x: half + 2 * u, y: contactY + padHalf * 0.3, ...onFar },
    { text: 'part', x: restX(plan) + 0.3 * partWidth, y: contactY + 0.36 * partHeight },
  ]
}
