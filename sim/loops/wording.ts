/** How the sentences about loops write their quantities; the page hands in its own units. All take SI. */
export interface LoopWording {
  force(newtons: number): string
  forceRate(newtonsPerSecond: number): string
  length(metres: number): string
  speed(metresPerSecond: number): string
  stiffness(newtonsPerMetre: number): string
  mass(kilograms: number): string
}

export const rounded = (value: number, digits = 3) => String(Number(value.toPrecision(digits)))

export const SI_LOOP_WORDING: LoopWording = {
  force: (newtons) => `${rounded(newtons)} N`,
  forceRate: (rate) => `${rounded(rate)} N/s`,
  length: (metres) => `${rounded(metres * 1e6)} µm`,
  speed: (speed) => `${rounded(speed * 1e3)} mm/s`,
  stiffness: (stiffness) => `${rounded(stiffness / 1e6)} N/µm`,
  mass: (mass) => `${rounded(mass)} kg`,
}
