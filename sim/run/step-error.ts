import type { GripResult, Metrics } from '../job/grip/result.ts'

/** Largest relative change of peak and settled force from a run to one at half its step; null for a run without force. */
export function stepErrorBetween({ metrics, events }: GripResult, half: Metrics): number | null {
  if (events.unstable !== null || !metrics.peakForce || !metrics.settledForce) return null
  const change = (a: number, b: number | null) => Math.abs((b ?? 0) / a - 1)
  return Math.max(change(metrics.peakForce, half.peakForce), change(metrics.settledForce, half.settledForce))
}
