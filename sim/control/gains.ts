/**
 * Gains of a PI current controller by pole-zero cancellation: its zero ki/kp lies on the winding's pole R/L, so that
 * the closed loop is 1/(1 + s/bandwidth). Takes Ω, H and rad/s; returns kp in V/A and ki in V/(A·s).
 */
export function currentGains(resistance: number, inductance: number, bandwidth: number): { kp: number; ki: number } {
  return { kp: inductance * bandwidth, ki: resistance * bandwidth }
}
