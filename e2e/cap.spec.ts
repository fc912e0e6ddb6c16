/** A closure on the page: its bench, its picture that turns, its edits, its link, US units; views that do not take it say so. */
import { expect, openBench, test } from './support.ts'

test('a lid is turned on, edited, undone and shared; the picture turns with the run', async ({ page }) => {
  await openBench(page)
  await page.getByRole('button', { name: 'Presets' }).click()
  await page.getByRole('menuitem', { name: /Lid of 63 mm on a jar of apricots/ }).click()
  const card = page.getByRole('article', { name: 'Current clamp' })
  await expect(card).toContainText('Tight: turned on with 3.', { timeout: 60_000 })
  await expect(page.locator('.window-line')).toContainText('application torque 2.82')
  await expect(
    page.getByRole('img', { name: /^Torque over angle on the thread\. Held against application torque 2\.82/ }),
  ).toBeVisible()
  const picture = page.getByRole('img', {
    name: 'Current clamp, tight: jar, thread, closure and chuck in half section.',
  })
  await expect(picture).toBeVisible()
  await expect(page.locator('.caution-line')).toContainText('Turning heads wind up')

  const cut = () => picture.innerHTML()
  const later = await cut()
  await page.getByRole('slider', { name: /^Time/ }).first().focus()
  await page.keyboard.press('Home')
  await expect.poll(cut).not.toBe(later)

  await page.locator('summary', { hasText: 'Closure and liner' }).first().click()
  const strip = page.getByRole('spinbutton', { name: /^Stripping torque/ })
  await strip.fill('3.5')
  await strip.press('Enter')
  await expect(card).toContainText('Strips after', { timeout: 60_000 })
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(card).toContainText('Tight: turned on with 3.', { timeout: 60_000 })

  const open = (view: string) =>
    page.getByRole('navigation', { name: 'Views' }).getByRole('button', { name: view, exact: true }).click()
  await open('Model')
  await expect(page.getByRole('heading', { name: 'Torque of a thread' })).toBeVisible({ timeout: 60_000 })
  await open('Log')
  await expect(page.getByText('keep hands out of the head and the chuck')).toBeVisible()
  await open('Bench')

  await page.reload()
  await expect(page.getByRole('article', { name: 'Current clamp' })).toContainText('Tight', { timeout: 60_000 })
})

test('its lesson turns lids on, at two speeds', async ({ page }) => {
  await openBench(page)
  await page.getByRole('navigation', { name: 'Views' }).getByRole('button', { name: 'Lessons' }).click()
  await page.getByRole('button', { name: /What a lid makes of speed/ }).click()
  await expect(
    page.getByRole('img', { name: /jar, thread, closure and chuck in half section\.$/ }).first(),
  ).toBeVisible({
    timeout: 60_000,
  })
  const form = page.getByRole('form', { name: 'Question' })
  await form.getByRole('spinbutton', { name: /^Application torque/ }).fill('5.1')
  await form.getByRole('button', { name: 'Run it' }).click()
  await expect(page.getByRole('region', { name: 'Answer' })).toContainText('It is 5.', { timeout: 60_000 })
  const verdicts = page.getByRole('region', { name: 'Verdicts' })
  await expect(verdicts).toContainText('Tight')
  await expect(verdicts).toContainText('Forced')
})
