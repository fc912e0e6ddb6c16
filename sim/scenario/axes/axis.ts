/** A generic axis as the data sets give it; keys left out take the scenario's defaults. */
export interface AxisInput {
  id: string
  title: string
  actuator: { kind: string; family: string; motor: object; transmission: object }
}
