/** What a web adds to the record, in the order in which its load shows it. */
export const WEB_CHANNELS = [
  { id: 'tension', label: 'tension', unit: 'N' },
  { id: 'rollTension', label: 'tension at the roll', unit: 'N' },
  { id: 'lineSpeed', label: 'speed of the line', unit: 'm/s' },
  { id: 'rimSpeed', label: 'speed of the rim', unit: 'm/s' },
  { id: 'slack', label: 'slack', unit: 'm' },
  { id: 'radius', label: 'radius of the roll', unit: 'm' },
] as const
