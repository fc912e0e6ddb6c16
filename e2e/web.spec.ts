/** A web on the page: its bench, its picture that runs, its edits, a strategy that it refuses, its link; views that do not take it say so. */
import { expect, openBench, test } from './support.ts'

test('film is pulled over trays, edited, undone and shared; the picture runs with the line', async ({ page }) => {
  await openBench(page)
  await page.getByRole('button', { name: 'Presets' }).click()
  await page.getByRole('menuitem', { name: /Lidding film over trays/ }).click()
  const card = page.getByRole('article', { name: 'Current clamp' })
  await expect(card).toContainText('Taut from 1.20 s on', { timeout: 60_000 })
  await expect(page.getByRole('article', { name: 'Threshold stop' })).toContainText('A threshold stop halts the roll')
  await expect(page.locator('.window-line')).toContainText('tension 12 N or more from 1.20 s on')
  await expect(page.getByRole('img', { name: /^Tension over time\. Held against tension 12/ })).toBeVisible()
  const picture = page.getByRole('img', {
    name: 'Current clamp, taut: line, gauge roll, idlers and driven roll in section.',
  })
  await expect(picture).toBeVisible()
  await expect(page.locator('.caution-line')).toContainText('draw in hands at the nip')

  const cut = () => picture.innerHTML()
  const later = await cut()
  await page.getByRole('slider', { name: /^Time/ }).first().focus()
  await page.keyboard.press('Home')
  await expect.poll(cut).not.toBe(later)

  await page.locator('summary', { hasText: 'Tension window' }).first().click()
  const most = page.getByRole('spinbutton', { name: /^Most tension/ })
  await most.fill('18')
  await most.press('Enter')
  await expect(card).toContainText('Stretched at', { timeout: 60_000 })
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(card).toContainText('Taut from 1.20 s on', { timeout: 60_000 })

  await page.reload()
  await expect(page.getByRole('article', { name: 'Current clamp' })).toContainText('Taut', { timeout: 60_000 })
})
