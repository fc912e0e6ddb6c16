/** What a closure adds to the record, in the order in which its load shows it. */
export const CAP_CHANNELS = [
  { id: 'torque', label: 'torque of the chuck', unit: 'N·m' },
  { id: 'threadTorque', label: 'torque of the thread', unit: 'N·m' },
  { id: 'angle', label: 'angle of the closure', unit: 'rad' },
  { id: 'preload', label: 'preload of the liner', unit: 'N' },
] as const
