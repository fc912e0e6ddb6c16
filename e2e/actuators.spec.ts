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

test('the table is narrowed to what is asked for, and says to how many', async ({ page }) => {
  await page.goto('./')
  await page.getByRole('navigation', { name: 'Views' }).getByText('Actuators', { exact: true }).click()
  const rows = page.locator('.axes-scroll tbody tr')
  await expect(rows).toHaveCount(21)
  const columns = await page.locator('.axes-scroll thead th').allInnerTexts()
  const place = (label: string) => columns.findIndex((text) => text.startsWith(label))
  const all = await rows.evaluateAll((trs) => trs.map((tr) => [...tr.children].map((cell) => cell.textContent)))
  const others = all.slice(1)
  const held = (cells: string[]) => cells.slice(place('Power loss') + 1).every((text) => /^\W*Held/.test(text))
  const expected = {
    'every strategy holding the part': others.filter(held),
    'a back-drivable drive': others.filter((cells) => cells[place('Back-drivable')] === 'yes'),
    'hold kept at power loss': others.filter((cells) => cells[place('Power loss')] !== 'lets go'),
  }
  for (const [label, kept] of Object.entries(expected)) {
    await page.getByLabel(label).check()
    await expect(rows, label).toHaveCount(1 + kept.length)
    await expect(page.getByText(`${kept.length} of 20, and the one on the bench`)).toBeVisible()
    expect(kept.length, label).toBeGreaterThan(0)
    expect(kept.length, label).toBeLessThan(20)
    await page.getByLabel(label).uncheck()
  }
  await page.getByLabel('current within the continuous rating').check()
  await expect(rows.first()).toContainText('On the bench')
  await audit(page, 'narrowed')
})
