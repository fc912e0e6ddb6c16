import type { Page } from '@playwright/test'
import { audit, card, expect, openBench, outcome, rulesFor, STRATEGIES, settled, sideways, test } from './support.ts'

const window_ = (page: Page) => page.getByRole('status').filter({ hasText: 'Force window' })
const step = (page: Page, name: string) => page.getByRole('region', { name, exact: true })

async function type(page: Page, label: string, text: string) {
  const field = page.getByRole('textbox', { name: label })
  await field.fill(text)
  await field.press('Enter')
  return field
}

test('a new job is blank, asks for part, arm and axis in this order, and shows its window as soon as there is one', async ({
  page,
}) => {
  await openBench(page)
  const before = await outcome(page)
  await card(page, 'Current clamp').getByRole('button', { name: 'Pin' }).click()
  await page.getByRole('button', { name: 'New job' }).click()
  await expect(page).toHaveURL(/&view=new-job$/)
  for (const field of await step(page, 'Part').getByRole('textbox').all()) await expect(field).toHaveValue('')
  await expect(step(page, 'Arm').getByRole('radio')).toHaveCount(0)
  await expect(step(page, 'Axis').getByRole('radio')).toHaveCount(0)
  await expect(window_(page)).toContainText('appears here')

  await type(page, 'Name of the job', 'Castings, left cell')
  await type(page, 'Width', '4.5 in')
  await type(page, 'Mass', '0.9 kg')
  await expect(window_(page)).toContainText('appears here')
  const friction = await type(page, 'Static friction', '45 N')
  await expect(friction).toHaveValue('45 N')
  await expect(friction).toHaveAccessibleErrorMessage(/“N” is no unit of this quantity/)
  await type(page, 'Static friction', '0.45')
  await expect(window_(page)).toContainText(/from 9\.81\sN at each contact with the arm at rest/)
  await type(page, 'Mark limit', '0.06 kN')
  await expect(window_(page)).toContainText(/9\.81\sN to 60\.0\sN at each contact with the arm at rest/)

  await expect(step(page, 'Arm').getByRole('radio')).toHaveCount(2)
  await expect(step(page, 'Axis').getByRole('radio')).toHaveCount(0)
  await step(page, 'Arm').getByRole('radio', { name: 'It moves the part' }).check()
  await type(page, 'Acceleration upwards', '6')
  await expect(window_(page)).toContainText(/15\.8\sN to 60\.0\sN at each contact:/)
  await step(page, 'Axis')
    .getByRole('radio', { name: /four-start lead screw/ })
    .check()
  for (const colorScheme of ['light', 'dark'] as const) {
    for (const width of [1440, 390]) {
      await page.emulateMedia({ colorScheme })
      await page.setViewportSize({ width, height: 844 })
      await audit(page, `new job, ${colorScheme}, ${width}`, rulesFor(colorScheme))
      expect(await sideways(page)).toBeLessThanOrEqual(0)
    }
  }
  await page.setViewportSize({ width: 1440, height: 900 })

  await page.getByRole('button', { name: 'Put it on the bench' }).click()
  await settled(page)
  await expect(page.locator('.scenario-name')).toHaveText('Castings, left cell')
  await expect(page.getByRole('region', { name: 'Table of pinned runs' })).toHaveCount(0)
  await expect(page.locator('.window-line')).toContainText(/15\.8\sN to 60\.0\sN/)
  await expect(page.getByRole('combobox', { name: 'Actuator' })).toHaveValue('screw/brush-screw')

  const views = page.getByRole('navigation', { name: 'Views' })
  await views.getByRole('button', { name: 'Report' }).click()
  const report = page.locator('.report')
  await expect(report).toContainText('Castings, left cell')
  await expect(report).toContainText('900 g')
  await expect(report).not.toContainText(/teapot|polyurethane/i)
  await views.getByRole('button', { name: 'Bench' }).click()
  await page.getByRole('button', { name: 'Present', exact: true }).click()
  const slides = page.getByRole('region', { name: 'Customer view' })
  await expect(slides).toContainText('114 mm wide')
  await expect(slides).not.toContainText(/teapot|polyurethane/i)
  await page.keyboard.press('Escape')

  await page.getByRole('button', { name: 'Undo' }).click()
  expect(await outcome(page), 'one undo brings the job before back').toEqual(before)
})

test('a new job is made by keyboard alone, and what was told survives a look elsewhere', async ({ page }) => {
  await openBench(page)
  await page.getByRole('button', { name: 'New job' }).focus()
  await page.keyboard.press('Enter')
  await page.getByRole('textbox', { name: 'Name of the job' }).focus()
  for (const text of ['Nuts', '30', '0.1', '0.3']) {
    await page.keyboard.type(text)
    await page.keyboard.press('Tab')
  }
  await expect(page.getByRole('textbox', { name: 'Mass' })).toHaveValue('0.1')
  await page.goBack()
  await settled(page)
  await page.goForward()
  await expect(page.getByRole('textbox', { name: 'Name of the job' })).toHaveValue('Nuts')
  await page.getByRole('radio', { name: 'It stands still' }).focus()
  await page.keyboard.press('Space')
  await page.getByRole('radio', { name: /gear 4 : 1 and rack/ }).focus()
  await page.keyboard.press('Space')
  await page.getByRole('button', { name: 'Put it on the bench' }).focus()
  await page.keyboard.press('Enter')
  await settled(page)
  await expect(page.locator('.scenario-name')).toHaveText('Nuts')
})

test('both ways to another axis do the same: all of its data, what changed said, one undo', async ({ page }) => {
  await openBench(page)
  const before = await outcome(page)
  const actuator = page.getByRole('combobox', { name: 'Actuator' })
  await actuator.selectOption({ label: 'Voice coil' })
  await expect(actuator).toHaveValue('direct/voice-coil')
  const notice = page.locator('.notice')
  await expect(notice).toContainText(/On the bench now: Voice coil.*Undo takes all of it back/)
  await notice.locator('summary').click()
  await expect(notice.getByRole('listitem').filter({ hasText: 'Force constant' })).toBeVisible()
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    await audit(page, `what changed, ${colorScheme}`, rulesFor(colorScheme))
  }
  const title = /now: (.*?), with its own/.exec((await notice.textContent())!)![1]!
  const byBench = await outcome(page)
  const name = await page.locator('.scenario-name').textContent()
  await page.getByRole('button', { name: 'Undo' }).click()
  expect(await outcome(page)).toEqual(before)

  await page.getByRole('navigation', { name: 'Views' }).getByRole('button', { name: 'Actuators' }).click()
  const row = page.locator('.axes-scroll tbody tr').filter({ hasText: title })
  await row.getByRole('button', { name: /Put on the bench/ }).click()
  for (const strategy of STRATEGIES) await expect(card(page, strategy)).toBeVisible()
  expect(await outcome(page)).toEqual(byBench)
  await expect(page.locator('.scenario-name')).toHaveText(name!)
})
