/** Actuators and the axis beside, for the jobs that are no grips: compared, narrowed, put on the bench, set beside it. */
import { scenarioToLink } from '../app/store/link.ts'
import { axesFor, checkScenario, type Scenario } from '../sim/index.ts'
import { CAP_PRESETS, WEB_PRESETS } from '../sim/others.ts'
import { pressLink } from './quick.ts'
import { audit, card, expect, openBench, sideways, test } from './support.ts'

function shortLink({ scenario }: { scenario: Scenario }, duration: number, more: object = {}): string {
  const checked = checkScenario({ ...scenario, ...more, run: { duration } })
  if (!checked.ok) throw new Error('refused')
  return `./#s=${scenarioToLink(checked.scenario)}`
}

const JOBS = [
  {
    job: 'press',
    address: pressLink(),
    asks: 'Which axis suits the joint?',
    wanted: /force of the ram that is wanted on the bench, [\d ]+ N/,
    well: 'every strategy seating the bushing',
    axis: 'Brushless 80 mm, ball screw 20 × 5',
    family: 'screw/brushless-screw',
    strategies: ['Threshold stop', 'Current clamp', 'Sensed force'],
    word: 'Seated',
  },
  {
    job: 'cap',
    address: shortLink(CAP_PRESETS[0]!, 1.2),
    asks: 'Which axis suits the closure?',
    wanted: /application torque that is wanted on the bench, [\d.]+ N·m/,
    well: 'every strategy tightening the closure',
    axis: 'Torque motor 110 mm, motor alone',
    family: 'spindle/brushless-spindle',
    strategies: ['Threshold stop', 'Current clamp', 'Sensed force'],
    word: 'Tight',
  },
  {
    job: 'web',
    address: shortLink(WEB_PRESETS[1]!, 2.4, {
      line: { radius: 0.04, ramps: [{ start: 1.5, speed: 0.6, acceleration: 2, jerk: 20 }] },
    }),
    asks: 'Which axis suits the web?',
    wanted: /tension that is wanted on the bench, [\d.]+ N/,
    well: 'every strategy keeping the web taut',
    axis: 'Brush motor 35 mm, two-stage gear 20 : 1',
    family: 'spindle/brush-spindle',
    strategies: ['Current clamp', 'Sensed force'],
    word: 'Taut',
  },
] as const

for (const { job, address, asks, wanted, well, axis, family, strategies, word } of JOBS)
  test(`axes are compared for a ${job}, and one is set beside that of the bench`, async ({ page }) => {
    const done = async () => {
      for (const strategy of strategies) await expect(card(page, strategy)).toHaveAttribute('aria-busy', 'false')
    }
    await page.goto(address)
    await done()
    await page
      .getByRole('navigation', { name: 'Views' })
      .getByRole('button', { name: 'Actuators', exact: true })
      .click()
    await expect(page.getByRole('heading', { name: asks })).toBeVisible()
    await expect(page.getByText(wanted)).toBeVisible()
    const rows = page.locator('.axes-scroll tbody tr')
    const others = axesFor(job).length
    await expect(rows).toHaveCount(1 + others)
    await expect(page.locator('.axes-scroll thead th')).toHaveCount(
      2 + (job === 'press' ? 10 : 9) + 2 + strategies.length,
    )
    await page.getByLabel(well).check()
    await expect(page.getByText(new RegExp(`^\\d+ of ${others}, and the one on the bench`))).toBeVisible()
    await expect(rows.first()).toContainText('On the bench')
    await page.getByLabel(well).uncheck()
    const row = rows.filter({ hasText: axis })
    await row
      .getByText(/as set/)
      .first()
      .click()
    await audit(page, `actuators of a ${job}`)
    await page.setViewportSize({ width: 390, height: 844 })
    expect(await sideways(page)).toBeLessThanOrEqual(0)
    await page.setViewportSize({ width: 1280, height: 720 })

    await row.getByRole('button', { name: /Put on the bench/ }).click()
    await expect(page.getByRole('combobox', { name: 'Actuator' })).toHaveValue(family)
    await done()
    await page.getByRole('button', { name: 'Undo' }).click()
    await page.getByRole('button', { name: 'Second axis' }).click()
    await page.getByRole('menuitem', { name: axis }).click()
    const line = page.getByRole('region', { name: 'Two axes side by side' })
    await expect(line).toContainText(axis)
    await done()
    for (const strategy of strategies) {
      const half = card(page, strategy).getByRole('region', { name: `${strategy} on ${axis}` })
      await expect(half.locator('.word .verdict-said').first()).toBeVisible()
      if (strategy === 'Current clamp') await expect(half.locator('.word')).toContainText(word)
    }
    await expect(page.locator('.lane')).toHaveCount(2 * strategies.length)
    await expect(page.locator('.effort-line[data-beside="true"] .effort-ring').first()).toBeVisible()
    await line.getByText('What was fitted to it').click()
    await expect(line.getByRole('row', { name: /Proportional gain/ }).first()).toBeVisible()
    await audit(page, `two axes of a ${job}`)
    await page.reload()
    await done()
    await expect(line).toContainText(axis)
  })

test('an axis beside that cannot do the job of the next file goes with it', async ({ page }) => {
  await openBench(page)
  await page.getByRole('button', { name: 'Second axis' }).click()
  await page.getByRole('menuitem').first().click()
  await expect(page.getByRole('region', { name: 'Two axes side by side' })).toBeVisible()
  await page.getByRole('button', { name: 'Presets' }).click()
  await page.getByRole('menuitem', { name: /Lid of 63 mm/ }).click()
  await expect(page.getByRole('region', { name: 'Two axes side by side' })).toHaveCount(0)
})
