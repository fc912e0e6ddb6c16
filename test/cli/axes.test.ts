/** Which axis suits, asked on the command line. */
import { describe, expect, it } from 'vitest'
import { axesFor } from '../../sim/index.ts'
import { here } from './here.ts'

describe('the command axes', () => {
  it('lists every axis that can do the job, the one of the file first, with what becomes of the work', async () => {
    const { status, stdout } = await here('axes', 'tray-film', '--set', 'run.duration=2', '--set', 'line.ramps=[]')
    expect(status).toBe(0)
    const [head, columns, ...rows] = stdout.trim().split('\n')
    expect(head).toMatch(/^Which axis suits the web\? Each is fitted to the tension that the file wants, 18\.\d N;/)
    expect(columns).toMatch(
      /^id +continuous \[N\] .* moving \[kg·m²\] +top speed \[rad\/s\] +power loss +current-clamp +sensed-force$/,
    )
    expect(rows.map((row) => row.split(/ {2,}/)[0])).toEqual(['own', ...axesFor('web').map(({ id }) => id)])
    expect(rows[0]).toMatch(/ taut +taut$/)
  })

  it('asks about one, and hands out the file with it, which runs as it says', async () => {
    const one = ['axes', 'jar-lid', '--set', 'run.cycle=null', '--axis', 'spindle-torque-110', '--format', 'json']
    const { stdout } = await here(...one)
    const { format, wanted, axes } = JSON.parse(stdout)
    expect(format).toBe('jawbench-axes')
    expect(axes.map(({ id }: { id: string }) => id)).toEqual(['own', 'spindle-torque-110'])
    expect(axes[0].scenario).toBeUndefined()
    const [, told] = axes
    expect(told).toMatchObject({ kind: 'spindle', family: 'brushless-spindle', faults: [], strokeReserve: null })
    expect(told.scenario.strategies.sensedForce.target / wanted).toBeCloseTo(1, 2)
    expect(told.strategies.map(({ verdict }: { verdict: string }) => verdict)).toEqual(['tight', 'tight', 'tight'])
  })

  it('refuses an axis that the job does not take', async () => {
    const { status, stderr } = await here('axes', 'jar-lid', '--axis', 'voice-coil-40')
    expect(status).toBe(2)
    expect(stderr).toContain('--axis: given "voice-coil-40", allowed all, spindle-60')
  })
})
