/** A press on the page: its bench, its edits, its link; views that take grips only say so. */
import { castArm } from '../sim/scenario/presets/cast-arm.ts'
import { pressLink } from './quick.ts'
import { expect, openBench, settled, test } from './support.ts'

test('a press preset is pressed, edited, undone and shared', async ({ page }) => {
  await openBench(page)
  await page.getByRole('button', { name: 'Presets' }).click()
  await page.getByRole('menuitem', { name: /Steel bushing into a cast arm/ }).click()
  const card = page.getByRole('article', { name: 'Current clamp' })
  await expect(card).toContainText('Seated at 12.2 mm', { timeout: 60_000 })
  await expect(
    page.getByRole('img', { name: /^Force of the ram over depth of the bushing\. The band runs from 100 N/ }),
  ).toBeVisible()
  await expect(
    page.getByRole('img', { name: 'Current clamp, seated: ram, bushing and bore in section.' }),
  ).toBeVisible()
  await expect(page.locator('.caution-line')).toContainText('Presses crush')

  await page.locator('summary', { hasText: 'Bushing' }).first().click()
  const interference = page.getByRole('spinbutton', { name: /^Interference/ })
  await interference.fill('4')
  await interference.press('Enter')
  await expect(card).toContainText('Below the band at', { timeout: 60_000 })
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(card).toContainText('Seated at 12.2 mm', { timeout: 60_000 })

  const views = page.getByRole('navigation', { name: 'Views' })
  await views.getByRole('button', { name: 'Log', exact: true }).click()
  await expect(page.getByText('keep hands out of the way of the ram')).toBeVisible()
  await views.getByRole('button', { name: 'Bench', exact: true }).click()
  await expect(card).toContainText('Seated')

  await page.reload()
  await expect(page.getByRole('article', { name: 'Current clamp' })).toContainText('Seated', { timeout: 60_000 })
  await page.getByRole('button', { name: 'Presets' }).click()
  await page.getByRole('menuitem').first().click()
  await expect(page.getByRole('article', { name: 'Current clamp' })).toContainText('Held', { timeout: 60_000 })
  await settled(page)
})

test('joints are studied: how many are seated, what drives the others, and a map', async ({ page }) => {
  await page.goto(pressLink())
  await expect(page.getByRole('article', { name: 'Current clamp' })).toContainText('Seated', { timeout: 60_000 })
  await page.getByRole('navigation', { name: 'Views' }).getByRole('button', { name: 'Spread', exact: true }).click()
  await expect(page.locator('.window-line')).toContainText('Joint window')
  await page.getByRole('spinbutton', { name: 'Parts' }).fill('20')
  await page.getByRole('spinbutton', { name: 'Parts' }).press('Enter')
  await page.getByRole('button', { name: 'Press them', exact: true }).click()
  const shares = page.getByRole('article', { name: 'Current clamp' })
  await expect(shares).toContainText(/of 20 are seated/, { timeout: 120_000 })
  await expect(page.getByRole('region', { name: 'Forces of all parts' })).toContainText('Seating force of all parts')
  await expect(page.getByRole('heading', { name: 'With which force are most bushings seated?' })).toBeVisible()
  await page.getByText('All figures').click()
  await expect(page.getByRole('rowheader', { name: 'Depth mm' })).toBeVisible()
  await page
    .getByRole('button', { name: /^Part \d+$/ })
    .first()
    .click()
  await expect(page.getByText(/of the study is on the bench/)).toBeVisible()
})

test('a forced joint is explained and saved, its runs pinned, its equations told', async ({ page }) => {
  await page.goto(pressLink({ window: { ...castArm.window, mostForce: 2000, seat: { least: 1500 } } }))
  const card = page.getByRole('article', { name: 'Current clamp' })
  await expect(card).toContainText('Forced at', { timeout: 60_000 })
  await card.getByText('Why, and what would change it').click()
  await expect(card.getByText(/The ram sees at most/)).toBeVisible()
  const rescues = card.getByRole('region', { name: 'What would save it' })
  await expect(rescues.getByText(/Seated from/).first()).toBeVisible()
  await card.getByRole('button', { name: 'Pin this run of Current clamp' }).click()
  const pins = page.getByRole('region', { name: 'Table of pinned runs' })
  await expect(pins.getByRole('rowheader', { name: 'Seating force' })).toBeVisible()

  await page.getByRole('navigation', { name: 'Views' }).getByRole('button', { name: 'Model', exact: true }).click()
  await expect(page.getByRole('heading', { name: 'Pressure of the joint' })).toBeVisible()
  await expect(page.getByRole('table', { name: 'Symbols: Force over depth' })).toContainText('Friction, at rest')
})

test('a lesson shows why seating by force is not seating by depth', async ({ page }) => {
  await openBench(page)
  await page.getByRole('navigation', { name: 'Views' }).getByRole('button', { name: 'Lessons', exact: true }).click()
  await page.getByRole('button', { name: /Seating by force is not seating by depth/ }).click()
  const depth = page.getByRole('spinbutton', { name: /^Depth/ })
  await depth.fill('4.8')
  await depth.press('Enter')
  await page
    .getByRole('button', { name: /^(Run it|Answer)/ })
    .first()
    .click()
  const verdicts = page.getByRole('region', { name: 'Verdicts' })
  await expect(verdicts.getByRole('article', { name: 'By force, dry' })).toContainText('Short', { timeout: 60_000 })
  await expect(verdicts.getByRole('article', { name: 'By depth, dry' })).toContainText('Seated')
  await expect(page.getByRole('heading', { name: /^Right/ })).toBeVisible()
  await expect(
    page.getByRole('img', { name: /^By force, oily, forced.*: ram, bushing and bore in section/ }),
  ).toBeVisible()
})
