/** The load of free air: nothing resists, and the arm pulls only on an axis whose jaws do not keep each other's balance. */
import { describe, expect, it } from 'vitest'
import { Arm } from '../../sim/axis/arm.ts'
import { FreeLoad } from '../../sim/job/free.ts'

describe('free air', () => {
  it('feels the arm along its way where it is pulled, and not between two driven jaws', () => {
    const arm = new Arm()
    arm.state.along = 3
    const load = new FreeLoad()
    expect(load.pull(arm)).toBe(0)
    load.pulled = 1
    expect(load.pull(arm)).toBe(3)
  })

  it('resists nothing and is never met', () => {
    const load = new FreeLoad()
    expect([load.press(1, 1), load.effort(), load.felt(), load.most()]).toEqual([0, 0, 0, 0])
    expect(load.touched()).toBeNaN()
    expect(load.isLost()).toBe(false)
  })
})
