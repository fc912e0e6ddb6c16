/** States that a person comes to in the course of a job, wide and narrow, light and dark: axe finds nothing, nothing overflows. */
import type { Page } from '@playwright/test'
import { quickLink } from './quick.ts'
import { audit, card, expect, rulesFor, settled, sideways, test } from './support.ts'

/** Requirements, one of which is missed. */
const link = () => quickLink({ requirements: { holdMargin: { least: 0.1 }, contactTime: { most: 0.01 } } })

async function everywhere(page: Page, what: string) {
  for (const [width, height] of [
    [1440, 900],
    [390, 844],
  ] as const) {
    await page.setViewportSize({ width, height })
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      await audit(page, `${what}, ${width}, ${colorScheme}`, rulesFor(colorScheme))
    }
    expect(await sideways(page), `${what}, ${width}`).toBeLessThanOrEqual(0)
  }
  await page.setViewportSize({ width: 1440, height: 900 })
}

test('requirements, two axes side by side, and a study that has its answer', async ({ page }) => {
  await page.setViewportSize({ width: 1440, height: 900 })
  await page.goto(link())
  await settled(page)
  await expect(card(page, 'Current clamp').locator('.word')).toContainText('Requirement missed')
  await everywhere(page, 'requirements')

  await page.getByRole('button', { name: 'Second axis' }).click()
  await page.getByRole('menuitem').last().click()
  await settled(page)
  await expect(page.getByRole('region', { name: 'Two axes side by side' })).toBeVisible()
  await everywhere(page, 'two axes')

  await page.getByRole('navigation', { name: 'Views' }).getByRole('button', { name: 'Spread' }).click()
  await page.getByLabel('Parts', { exact: true }).fill('40')
  await page.getByLabel('Parts', { exact: true }).press('Enter')
  await page.getByRole('button', { name: 'Grip them' }).click()
  await expect(page.getByRole('button', { name: '40 more' })).toBeVisible()
  await everywhere(page, 'spread')
})
