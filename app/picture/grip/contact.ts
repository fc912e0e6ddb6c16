/** Who gives how much at a contact: the squeeze shared by pad and part, from the recorded motion and force. */
import { contactsOf, type Scenario, travelToContact } from '../../../sim/index.ts'

export type SideName = 'driven' | 'far'

/** All in metres. */
export interface ContactShare {
  /** How far the undeformed pad and the undeformed part overlap; below 0 the gap between them. */
  overlap: number
  /** How far the pad is pressed in. */
  pad: number
  /** How far the part's surface is pressed in, a lasting dent included. */
  part: number
}

export interface JawState {
  travel: number
  partShift: number
  force: number
  farForce: number
  dent: number
}

/** Gap between jaw and part at the start [m] and whether both jaws move; a scenario's own, so worked out once. */
export interface ContactGeometry {
  gap: number
  mirrored: boolean
  padStiffness: number
}

export const contactGeometry = (scenario: Scenario): ContactGeometry => ({
  gap: travelToContact(scenario),
  mirrored: contactsOf(scenario) === 2,
  padStiffness: scenario.jaws.padStiffness,
})

/** Squeeze of the two sides and its share in pad and part. */
export function contactShares(geometry: ContactGeometry, jaw: JawState): Record<SideName, ContactShare> {
  const driven = jaw.travel - geometry.gap - jaw.partShift
  const far = geometry.mirrored ? jaw.travel - geometry.gap + jaw.partShift : jaw.partShift
  const dent = jaw.dent / 2
  return {
    driven: share(driven, jaw.force / geometry.padStiffness, dent),
    far: share(far, jaw.farForce / geometry.padStiffness, dent),
  }
}

/** `padGives`: force over pad stiffness. Without force nothing is pressed in but the dent. */
function share(overlap: number, padGives: number, dent: number): ContactShare {
  if (overlap <= 0 || padGives <= 0) return { overlap, pad: 0, part: dent }
  const pad = padGives < overlap ? padGives : overlap
  return { overlap, pad, part: Math.max(dent, overlap - pad) }
}
