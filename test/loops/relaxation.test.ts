import { expect, it } from 'vitest'
import { contactsOf } from '../../sim/index.ts'
import { jawStiffness } from '../../sim/job/grip/statics.ts'
import type { GripContact } from '../../sim/loops/jobs/grip.ts'
import type { Dense } from '../../sim/loops/matrix.ts'
import { plantModel } from '../../sim/loops/plant.ts'
import { workingPoint } from '../../sim/loops/working-point.ts'
import { scenarioOf } from '../checks/support.ts'

/** x for A x = b by elimination. */
function solve(a: Dense, b: number[]): number[] {
  const n = a.rows
  const rows = Array.from({ length: n }, (_, i) => [...Array.from({ length: n }, (_, j) => a.at(i, j)), b[i]!])
  for (let i = 0; i < n; i++) {
    const best = rows
      .slice(i)
      .reduce((most, row, k) => (Math.abs(row[i]!) > Math.abs(rows[most]![i]!) ? i + k : most), i)
    ;[rows[i], rows[best]] = [rows[best]!, rows[i]!]
    for (let k = 0; k < n; k++) {
      if (k === i) continue
      const factor = rows[k]![i]! / rows[i]![i]!
      for (let j = i; j <= n; j++) rows[k]![j]! -= factor * rows[i]![j]!
    }
  }
  return rows.map((row, i) => row[n]! / row[i]!)
}

for (const layout of ['mirrored', 'anvil']) {
  for (const fraction of [0, 0.45]) {
    it(`a steady voltage presses a ${layout} part with what is left of its stiffness, φ = ${fraction}`, () => {
      const scenario = scenarioOf({
        jaws: { layout },
        part: { exponent: 1.5, stiffness: 4e6, relaxation: { fraction, time: 0.9 } },
      })
      const point = workingPoint(scenario, 'nominal')
      const { names, a, b, forceConstant, resistance, nearForce } = plantModel(scenario, point)
      const kept = [...names.keys()].filter((i) => names[i] !== 'sampled')
      const rest = solve(
        a.kept(kept),
        kept.map((i) => -b.at(i, 0)),
      )
      const at = (name: string) => rest[kept.findIndex((i) => names[i] === name)]!
      const force = Object.entries(nearForce).reduce((sum, [name, weight]) => sum + weight * at(name), 0)
      expect(force * contactsOf(scenario)).toBeCloseTo(forceConstant / resistance, 6)
      // Closed form: the pad keeps its stiffness, the half part 1 − φ of it, in series.
      const { part, pad } = point.contact as GripContact
      const left = 1 / (1 / pad + 1 / (part * (1 - fraction)))
      expect(force / at('jaw')).toBeCloseTo(layout === 'anvil' ? left / 2 : left, 3)
      if (fraction === 0)
        expect((force * contactsOf(scenario)) / at('jaw')).toBeCloseTo(jawStiffness(scenario, point.contact!), 3)
    })
  }
}
