import { describe, expect, it } from 'vitest'
import { channelsOf, jobOf } from '../../sim/index.ts'

/** What people read over the columns of axis and drive, whatever it works on. */
const told = (job: 'grip' | 'press' | 'cap' | 'web') =>
  channelsOf(jobOf({ job }))
    .slice(-10)
    .map(({ id, label, unit }) => `${id}: ${label} [${unit}]`)

describe('columns of axis and drive', () => {
  it('are told in metres and newtons of an axis that goes straight', () => {
    expect(told('grip')).toEqual([
      'current: current [A]',
      'command: current command [A]',
      'voltage: voltage [V]',
      'travel: jaw travel [m]',
      'target: profile [m]',
      'motorTravel: motor-side travel [m]',
      'speed: jaw speed [m/s]',
      'temperature: winding temperature [°C]',
      'gauge: gauge reading [N]',
      'wantedSpeed: wanted speed [m/s]',
    ])
    expect(told('press').slice(3, 4)).toEqual(['travel: ram travel [m]'])
  })

  it('are told in radians of an axis that turns, and its gauge in what the job presses or pulls with', () => {
    for (const job of ['cap', 'web'] as const) {
      const effort = jobOf({ job }).output.effort
      expect(told(job).slice(-4)).toEqual([
        expect.stringMatching(/^speed: \w+ speed \[rad\/s\]$/),
        'temperature: winding temperature [°C]',
        `gauge: gauge reading [${effort}]`,
        'wantedSpeed: wanted speed [rad/s]',
      ])
    }
    expect(jobOf({ job: 'cap' }).output.effort).toBe('N·m')
    expect(jobOf({ job: 'web' }).output.effort).toBe('N')
  })
})
