import { METRICS } from '../sim/index.ts'
import { audit, card, expect, field, openBench, sideways, test } from './support.ts'

const noteOf = (id: string) => METRICS.find((metric) => metric.id === id)!.note

test('every field says what it does to the grip, every figure how it is computed: by keyboard, by pointer, on a narrow page', async ({
  page,
}) => {
  await openBench(page)
  const stiffness = await field(page, 'Jaws', 'Pad stiffness')
  await stiffness.focus()
  await expect(page.locator('.note-line')).toContainText('a soft pad makes the impact smaller')
  await expect(page.locator('.note-line')).toContainText('Common practice 10 to 10\u202f000 N/mm.')
  await expect(stiffness).toHaveAccessibleDescription(/Common practice 10 to .* Allowed 0.1 to/)

  const clamp = card(page, 'Current clamp')
  const peak = clamp.getByRole('button', { name: 'Peak force', exact: true })
  const settled = clamp.getByRole('button', { name: 'Settled force', exact: true })
  await peak.focus()
  await expect(clamp.getByRole('tooltip')).toContainText(noteOf('peakForce'))
  await page.keyboard.press('ArrowDown')
  await expect(settled).toBeFocused()
  await expect(settled).toHaveAccessibleDescription(noteOf('settledForce'))
  await expect(clamp.getByRole('tooltip')).toContainText(noteOf('settledForce'))
  await audit(page, 'note of a figure')
  await page.keyboard.press('Escape')
  await expect(clamp.getByRole('tooltip')).toHaveCount(0)
  await clamp.getByRole('button', { name: 'Hold margin' }).hover()
  await expect(clamp.getByRole('tooltip')).toContainText(noteOf('holdMargin'))

  await page.setViewportSize({ width: 390, height: 844 })
  await clamp.getByText('Figures', { exact: true }).click()
  await clamp.getByRole('button', { name: 'Slip' }).click()
  await expect(clamp.getByRole('tooltip')).toContainText(noteOf('slipDistance'))
  expect(await sideways(page)).toBeLessThanOrEqual(0)
})
