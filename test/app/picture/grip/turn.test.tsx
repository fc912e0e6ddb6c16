import { renderToStaticMarkup } from 'react-dom/server'
import { expect, it } from 'vitest'
import { restFrame } from '../../../../app/picture/grip/frameAt.ts'
import { Gripper } from '../../../../app/picture/grip/Gripper.tsx'
import { scenarioOf } from './support.ts'

/** Angles in the view along the grip of a part held `centre` off, as it has turned by `turn` [rad]; [] where there is no such view. */
function drawn(centre: object, turn: number, fallen: number | null = null): string[] {
  const scenario = scenarioOf({ part: { centre } })
  const frame = { ...restFrame(scenario), turn, fallen }
  const picture = <Gripper frame={frame} scenario={scenario} width={400} height={300} label="gripper" />
  return renderToStaticMarkup(picture).match(/−?[\d.]+(?=°<)/g) ?? []
}

it('a part held off its centre of mass is shown along the grip with the angle by which it has turned', () => {
  expect(drawn({ across: 0.01 }, 0)).toEqual(['0'])
  expect(drawn({ across: 0.01 }, -Math.PI / 6)).toEqual(['−30.0'])
  expect(drawn({ up: 0.01 }, Math.PI / 6)).toEqual(['30.0'])
})

it('one held at it is not, nor one that has left the jaws', () => {
  expect(drawn({}, 0)).toEqual([])
  expect(drawn({ across: 0.01 }, 1, 0.1)).toEqual([])
})
