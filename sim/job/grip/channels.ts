/** What a grip adds to the record, in the order in which its load shows it. */
export const GRIP_CHANNELS = [
  { id: 'force', label: 'force', unit: 'N' },
  { id: 'farForce', label: 'force at the far contact', unit: 'N' },
  { id: 'partShift', label: 'part shift along the grip', unit: 'm' },
  { id: 'sag', label: 'part sag', unit: 'm' },
  { id: 'drift', label: 'part drift sideways', unit: 'm' },
  { id: 'turn', label: 'part turned', unit: 'rad' },
  { id: 'dent', label: 'dent', unit: 'm' },
] as const
