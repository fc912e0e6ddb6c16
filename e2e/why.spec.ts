import type { Locator, Page } from '@playwright/test'
import { quickLink } from './quick.ts'
import {
  audit,
  card,
  expect,
  field,
  openBench,
  outcome,
  pictures,
  settled,
  sideways,
  test,
  verdict,
} from './support.ts'

const fold = (page: Page, strategy: string) => card(page, strategy).locator('.why > summary')
const chart = (page: Page, strategy: string) => card(page, strategy).locator('.why-chart')
const list = (page: Page, strategy: string) => card(page, strategy).locator('.rescues')

/** Opens the fold of a strategy and waits for the end of its search. */
async function explained(page: Page, strategy: string) {
  await fold(page, strategy).click()
  await searched(page, strategy)
}

async function searched(page: Page, strategy: string) {
  await expect(chart(page, strategy)).toBeVisible()
  await expect(list(page, strategy).getByRole('button', { name: 'Cancel' })).toHaveCount(0)
  await expect(list(page, strategy).locator('.rescue-state')).not.toContainText('Searching')
}

const number = (text: string) => Number(text.replace('−', '-').replace(/[+\u202f]/g, ''))

/** Forces of all causes and of the figure, as they stand in the table. */
async function forces(table: Locator) {
  const read = async (rows: Locator) => (await rows.locator('td:nth-of-type(2)').allTextContents()).map(number)
  return {
    causes: await read(table.locator('tbody tr')),
    whole: (await read(table.locator('tfoot tr:first-child')))[0]!,
  }
}

test('a crushed part: why adds up, a change that saves it is tried, and one undo takes it back', async ({ page }) => {
  await openBench(page)
  await expect(verdict(page, 'Threshold stop')).toHaveText('Crushed')
  const before = await outcome(page)
  await explained(page, 'Threshold stop')

  const { causes, whole } = await forces(chart(page, 'Threshold stop'))
  expect(causes.length).toBeGreaterThan(3)
  expect(Math.abs(causes.reduce((sum, each) => sum + each, 0) / whole - 1)).toBeLessThan(0.01)
  await expect(card(page, 'Threshold stop').locator('.why-sentence')).toContainText('The part breaks at 65 N')
  await card(page, 'Threshold stop').getByText('How the causes are found').click()
  await expect(card(page, 'Threshold stop').locator('.why-body')).toContainText('Shapley value')

  const rescues = card(page, 'Threshold stop').getByRole('region', { name: 'What would save it' })
  const first = rescues.locator(':scope > ul > li').first()
  const label = await first.locator('.rescue-label').textContent()
  await first.getByRole('button', { name: 'Try it' }).click()
  // At once nothing of the crushed grip is left in sight, and focus is kept.
  await expect(chart(page, 'Threshold stop')).toHaveCount(0)
  await expect(card(page, 'Threshold stop').locator('.why-body')).toBeFocused()
  await expect(verdict(page, 'Threshold stop')).toHaveText('Held')
  await searched(page, 'Threshold stop')
  const drift = card(page, 'Threshold stop').getByRole('region', { name: 'How far it may drift' })
  const back = drift.locator(':scope > ul > li').filter({ hasText: label! })
  await expect(back).toContainText('crushed')
  const held = await forces(chart(page, 'Threshold stop'))
  expect(Math.abs(held.causes.reduce((sum, each) => sum + each, 0) / held.whole - 1)).toBeLessThan(0.01)

  await page.getByRole('button', { name: 'Undo' }).click()
  expect(await outcome(page)).toEqual(before)
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled()
})

test('a search is cancelled, taken up again, and ends with the scenario that it was about', async ({ page }) => {
  await openBench(page)
  await fold(page, 'Sensed force').click()
  const rescues = list(page, 'Sensed force')
  await expect(rescues.getByRole('button', { name: 'Cancel' })).toBeVisible()
  const searching = page.workers().length
  await rescues.getByRole('button', { name: 'Cancel' }).click()
  await expect(rescues.locator('.rescue-state')).toContainText(/Search cancelled after \d+ of/)
  await expect.poll(() => page.workers().length, 'the search ends').toBeLessThan(searching)
  const workers = page.workers().length
  const found = await rescues.locator(':scope > ul > li').count()
  await pictures(page)
  expect(await rescues.locator(':scope > ul > li').count(), 'nothing more is found after a cancel').toBe(found)
  await rescues.getByRole('button', { name: 'Search again' }).click()
  await expect(rescues.locator('.rescue-state')).toContainText(/Searching … \d+ of \d+/)

  await rescues.getByRole('button', { name: 'Cancel' }).click()
  await rescues.getByRole('button', { name: 'Search again' }).click()
  await expect(rescues.locator('.rescue-state')).toContainText(/Searching … \d+ of \d+/)

  const mass = await field(page, 'Part', 'Mass')
  await mass.fill('700')
  await mass.press('Enter')
  await expect(rescues).toHaveCount(0)
  await expect.poll(() => page.workers().length).toBeLessThanOrEqual(workers + 1)
  await settled(page)
  await searched(page, 'Sensed force')

  const speed = await field(page, 'Approach', 'Approach speed')
  await speed.fill('1')
  await speed.press('Enter')
  await expect(verdict(page, 'Sensed force')).toHaveText('Missed')
  await expect(card(page, 'Sensed force').locator('.why-sentence')).toContainText('The approach takes')
  await expect(chart(page, 'Sensed force')).toHaveCount(0)
})

test('beside each change, on a press, how many parts that vary it would hold', async ({ page }) => {
  await page.goto(quickLink())
  await settled(page)
  await expect(verdict(page, 'Threshold stop')).toHaveText('Crushed')
  await explained(page, 'Threshold stop')
  const rescues = list(page, 'Threshold stop')
  await rescues.getByRole('button', { name: 'Grip 200 parts' }).click()
  await expect(rescues.locator('.rescue-shares')).toContainText('Gripping 200 parts with each')
  await expect(rescues.getByRole('button', { name: 'Cancel' })).toHaveCount(0)
  const changes = rescues.locator(':scope > ul > li')
  const told = rescues.locator('.rescue-held')
  expect(await told.count()).toBe(await changes.count())
  await expect(told.first()).toContainText(
    /^Of 200 parts that vary as the file says .+ hold as required \(.+ points more/,
  )

  const mass = await field(page, 'Part', 'Mass')
  await mass.fill('700')
  await mass.press('Enter')
  await expect(told).toHaveCount(0)
})

test('why in US units, and by keyboard', async ({ page }) => {
  await openBench(page)
  await fold(page, 'Threshold stop').focus()
  await page.keyboard.press('Enter')
  await searched(page, 'Threshold stop')
  await page.getByRole('group', { name: 'Units' }).getByRole('radio', { name: 'US' }).check({ force: true })
  await expect(card(page, 'Threshold stop').locator('.why-sentence')).toContainText('lbf')
  await expect(chart(page, 'Threshold stop').locator('thead')).toContainText('lbf')
  await expect(list(page, 'Threshold stop')).toContainText('lbf/in')
  await fold(page, 'Threshold stop').focus()
  for (let press = 0; press < 5; press++) {
    await page.keyboard.press('Tab')
    if ((await page.evaluate(() => document.activeElement?.textContent ?? '')).startsWith('Try it')) break
  }
  await page.keyboard.press('Enter')
  await expect(verdict(page, 'Threshold stop')).toHaveText('Held')
  await page.keyboard.press('Control+z')
  await expect(verdict(page, 'Threshold stop')).toHaveText('Crushed')
})

test('why is accessible and fits: light, dark, narrow', async ({ page }) => {
  await openBench(page)
  await explained(page, 'Threshold stop')
  await explained(page, 'Current clamp')
  for (const theme of ['Light', 'Dark']) {
    await page.getByRole('group', { name: 'Theme' }).getByRole('radio', { name: theme }).check({ force: true })
    await audit(page, theme, (axe) => axe.include('.verdicts'))
  }
  await page.setViewportSize({ width: 390, height: 844 })
  await expect(chart(page, 'Threshold stop')).toBeVisible()
  await audit(page, 'narrow', (axe) => axe.include('.verdicts'))
  expect(await sideways(page)).toBeLessThanOrEqual(0)
})
