/** What a press adds to the record, in the order in which its load shows it. */
export const PRESS_CHANNELS = [
  { id: 'force', label: 'force of the ram', unit: 'N' },
  { id: 'depth', label: 'depth of the bushing', unit: 'm' },
  { id: 'jointForce', label: 'force of the joint', unit: 'N' },
  { id: 'shoulderForce', label: 'force of the shoulder', unit: 'N' },
] as const
