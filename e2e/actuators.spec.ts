import { audit, expect, sideways, test } from './support.ts'

test('every axis is compared, sorted, and put on the bench with one press', async ({ page }) => {
  await page.goto('./')
  await page.getByRole('navigation', { name: 'Views' }).getByRole('button', { name: 'Actuators' }).click()
  const rows = page.locator('.axes-scroll tbody tr')
  await expect(rows).toHaveCount(21)
  await expect(rows.first()).toContainText('On the bench')

  await page.getByRole('button', { name: /^Moving mass/ }).click()
  const masses = await rows.locator('td:nth-of-type(6)').allInnerTexts()
  const figures = masses.slice(1).map((text) => Number(text.replaceAll('\u202f', '')))
  expect(figures).toEqual([...figures].sort((a, b) => a - b))

  const coil = rows.filter({ hasText: 'Voice coil, 75 mm diameter' })
  await expect(coil).toContainText('lets go')
  await coil.getByText('does not press as set').or(coil.getByText('presses as set')).first().click()
  await audit(page, 'actuators')
  await page.setViewportSize({ width: 390, height: 844 })
  expect(await sideways(page)).toBeLessThanOrEqual(0)
  await page.setViewportSize({ width: 1280, height: 720 })

  await coil.getByRole('button', { name: /Put on the bench/ }).click()
  await expect(page.getByRole('combobox', { name: 'Actuator' })).toHaveValue('direct/voice-coil')
  await expect(page.locator('article[aria-busy="false"]')).toHaveCount(3)
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(page.getByRole('combobox', { name: 'Actuator' })).toHaveValue('screw/brushless-screw')
})
