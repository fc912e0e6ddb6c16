import type { Page } from '@playwright/test'
import { audit, expect, pictures, sideways, test } from './support.ts'

const figures = (page: Page) => page.getByRole('region', { name: 'Figures' })
const sentence = (page: Page) => figures(page).getByRole('status')
const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click()

/** A figure as a number, whatever its unit. */
async function reading(page: Page, name: string): Promise<number> {
  const text = await figures(page).locator('.figures > div').filter({ hasText: name }).locator('.figure').textContent()
  return Number.parseFloat((text ?? '').replace('−', '-'))
}

/** With the gains of the sensed force unfolded. */
async function openLive(page: Page) {
  const unfolded = ['strategies', 'strategies.sensedForce']
  await page.addInitScript((open) => localStorage.setItem('jawbench.open-sections', JSON.stringify(open)), unfolded)
  await page.goto('./')
  await press(page, 'Live')
  await expect(sentence(page)).toHaveText('Open. The part stands on its support.')
}

test('the plant runs on: it grips, hunts while a gain is too high, and drops its part without power', async ({
  page,
}) => {
  await openLive(page)
  await press(page, 'Close')
  await expect(sentence(page)).toHaveText('Gripping. The part stands on its support.')
  await expect.poll(() => reading(page, 'Grip force')).toBeGreaterThan(35)
  await press(page, 'up')
  await expect(sentence(page)).toHaveText('Gripping. The part hangs in the jaws.')
  await expect(page.getByRole('button', { name: 'Lift', exact: true })).toBeDisabled()

  const gain = page.locator('[id="strategies.sensedForce.kp"]')
  const calm = await gain.inputValue()
  await gain.fill(String(100 * Number(calm)))
  await gain.press('Enter')
  await expect(sentence(page)).toContainText('Hunting')
  await expect.poll(() => reading(page, 'Reversals')).toBeGreaterThan(50)
  await gain.fill(calm)
  await gain.press('Enter')
  await expect(sentence(page)).toHaveText('Gripping. The part hangs in the jaws.')
  await expect.poll(() => reading(page, 'Force ripple')).toBeLessThan(0.5)

  await press(page, 'Cut the power')
  await expect(sentence(page)).toHaveText(/^No power: the windings are \w+\. The part is no longer in the jaws\.$/)
  await expect(page.getByRole('button', { name: 'Close', exact: true })).toBeDisabled()
  const current = figures(page).locator('.figures > div').filter({ hasText: 'Current' }).locator('.figure')
  await expect(current).toHaveText(/^0\s/)
  await press(page, 'Restore the power')
  await expect(sentence(page)).toContainText('The jaws are kept where they stand.')
  await page.getByRole('group', { name: 'Jaws' }).getByRole('button', { name: 'Open' }).click()
  await expect(sentence(page)).toHaveText('Open. The part is no longer in the jaws.')
  await press(page, 'New part')
  await expect(sentence(page)).toHaveText('Open. The part stands on its support.')
})

test('it stands still when it is paused, rolls slower when it is slowed, and starts anew', async ({ page }) => {
  await openLive(page)
  const time = async () => Number.parseFloat((await figures(page).locator('.live-time').textContent()) ?? '')
  const drawn = await page.locator('.live-traces canvas').first().elementHandle()
  await press(page, 'Close')
  await expect.poll(time).toBeGreaterThan(1)
  await page.getByRole('group', { name: 'Speed' }).getByRole('radio', { name: '1/100×' }).check({ force: true })
  await expect.poll(() => page.getByText(/over the last 0\.03.s of simulated time/).count()).toBe(3)
  // The figures are read a few times a second: the first reading may be one of the full speed.
  const before = await time()
  await expect.poll(time).not.toBe(before)
  const clocks = async () => ({ plant: await time(), page: await page.evaluate(() => performance.now() / 1000) })
  const slowed = await clocks()
  await expect.poll(time).toBeGreaterThan(slowed.plant + 0.02)
  const later = await clocks()
  expect((later.plant - slowed.plant) / (later.page - slowed.page)).toBeLessThan(0.05)

  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur())
  await page.keyboard.press('Space')
  await expect(page.getByRole('button', { name: 'Go on' })).toBeVisible()
  const cursor = page.getByRole('slider', { name: /^Grip force/ })
  const paused = await cursor.getAttribute('aria-valuenow')
  await pictures(page)
  expect(await cursor.getAttribute('aria-valuenow')).toBe(paused)
  await cursor.press('ArrowLeft')
  expect(Number(await cursor.getAttribute('aria-valuenow'))).toBeLessThan(Number(paused))

  await page
    .getByRole('group', { name: 'Strategy' })
    .getByRole('radio', { name: 'Current clamp' })
    .check({ force: true })
  await press(page, 'Start anew')
  expect(await drawn?.evaluate((canvas) => canvas.isConnected)).toBe(true) // charts take new data, they are not made anew
  await expect.poll(time).toBeLessThan(0.5)
  await expect(sentence(page)).toHaveText('Open. The part stands on its support.')
  await page.getByRole('group', { name: 'Speed' }).getByRole('radio', { name: '1×' }).check({ force: true })
  await press(page, 'Close')
  await expect(sentence(page)).toHaveText('Gripping. The part stands on its support.')
})

test('one can look back at what has been, and the plant waits meanwhile', async ({ page }) => {
  await openLive(page)
  await press(page, 'Close')
  await expect(sentence(page)).toHaveText('Gripping. The part stands on its support.')
  const clock = async () => Number.parseFloat((await figures(page).locator('.live-time').textContent()) ?? '')
  await expect.poll(clock).toBeGreaterThan(4)
  const cursor = page.getByRole('slider', { name: /^Grip force/ })
  expect(await cursor.getAttribute('aria-valuetext')).not.toContain('shown from')
  await press(page, 'Earlier')
  await expect(page.getByRole('button', { name: 'Go on' })).toBeVisible()
  await expect(cursor).toHaveAttribute('aria-valuetext', /shown from/)
  await cursor.press('Home')
  await expect(cursor).toHaveAttribute('aria-valuenow', /^0(\.0\d*)?$/)
  await expect(cursor, 'open jaws hold nothing').toHaveAttribute('aria-valuetext', /Sensed force 0\sN; shown from 0/)
  await press(page, 'Go on')
  await expect(cursor).not.toHaveAttribute('aria-valuetext', /shown from/)
})

test('a part that is gone is replaced only where there is room', async ({ page }) => {
  await openLive(page)
  await press(page, 'Lift')
  await expect(sentence(page)).toHaveText('Open. The part is no longer in the jaws.')
  await press(page, 'New part')
  await expect(sentence(page)).toHaveText('Open. The part stands on its support.')
  await expect(page.getByRole('button', { name: 'New part' })).toBeDisabled()
})

test('the live view is accessible and fits: light, dark, narrow, with less motion', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await openLive(page)
  await expect(figures(page)).toContainText('Pause holds it')
  await press(page, 'Pause')
  for (const theme of ['Light', 'Dark']) {
    await page.getByRole('group', { name: 'Theme' }).getByRole('radio', { name: theme }).check({ force: true })
    await audit(page, theme)
  }
  await page.setViewportSize({ width: 390, height: 844 })
  expect(await sideways(page)).toBeLessThanOrEqual(0)
  await expect(page.getByRole('button', { name: 'Close', exact: true })).toBeInViewport()
  await audit(page, 'narrow')
})
