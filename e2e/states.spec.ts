/** States that a person comes to in the course of a job, wide and narrow, light and dark: axe finds nothing, nothing overflows. */
import type { Page } from '@playwright/test'
import { scenarioToLink } from '../app/store/link.ts'
import { checkScenario, PRESETS } from '../sim/index.ts'
import { audit, card, expect, rulesFor, settled, sideways, test } from './support.ts'

/** Short grips with requirements, one of which is missed, of parts that vary. */
function link(): string {
  const checked = checkScenario({
    ...PRESETS[0]!.scenario,
    run: { duration: 0.6 },
    arm: { gravity: 'across', lift: 0.45, moves: [] },
    requirements: { holdMargin: { least: 0.1 }, contactTime: { most: 0.01 } },
    spread: {
      varies: [
        { path: 'part.crackForce', law: 'lognormal', factor: 1.25 },
        { path: 'part.mass', law: 'normal', sd: 0.03, share: true },
      ],
    },
  })
  if (!checked.ok) throw new Error('refused')
  return `./#s=${scenarioToLink(checked.scenario)}`
}

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
