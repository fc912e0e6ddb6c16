/** Brushless motor with a screw. */
import { BRUSHLESS, BrushlessCase, BrushlessRotor, brushlessLabels } from '../elements/brushlessMotor.tsx'
import { LANTERN, ScrewSeats, ScrewTrain, screwLabels } from '../elements/screwLine.tsx'
import type { Plan } from '../grip/plan.ts'
import type { FamilyDrawing } from './drawing.ts'

const motor = ({ u, driveLeft, driveRight }: Plan) => ({ u, left: driveLeft, right: driveRight - LANTERN * u })

export const brushlessScrew: FamilyDrawing = {
  length: () => LANTERN + BRUSHLESS,
  Fixed: (props) => (
    <g>
      <BrushlessCase {...motor(props.plan)} />
      <ScrewSeats {...props} />
    </g>
  ),
  Moving: (props) => (
    <g>
      <BrushlessRotor
        {...motor(props.plan)}
        shaftEnd={props.plan.driveRight - 12 * props.plan.u}
        angle={props.motion.rotor}
        current={props.motion.current}
      />
      <ScrewTrain {...props} />
    </g>
  ),
  labels: (props) => [...brushlessLabels(motor(props.plan)), ...screwLabels(props)],
}
