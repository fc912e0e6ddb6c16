/** The live plant of a press, a closure and a web: driven by hand, hurt by a parameter that is turned under it, mended, and accessible. */
import type { Page } from '@playwright/test'
import { scenarioToLink } from '../app/store/link.ts'
import type { Preset } from '../sim/index.ts'
import { CAP_PRESETS, PRESS_PRESETS, WEB_PRESETS } from '../sim/others.ts'
import { audit, expect, rulesFor, sideways, test } from './support.ts'

const figures = (page: Page) => page.getByRole('region', { name: 'Figures' })
const sentence = (page: Page) => figures(page).getByRole('status')
const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true })
const press = (page: Page, name: string) => button(page, name).click()

/** A figure as a number, whatever its unit. */
async function reading(page: Page, name: string): Promise<number> {
  const text = await figures(page)
    .locator('.figures > div')
    .filter({ hasText: name })
    .first()
    .locator('.figure')
    .textContent()
  return Number.parseFloat((text ?? '').replace('−', '-').replaceAll('\u202f', ''))
}

async function openLive(page: Page, { scenario }: Preset, unfolded: string, strategy: string) {
  await page.addInitScript((open) => localStorage.setItem('jawbench.open-sections', JSON.stringify(open)), [unfolded])
  await page.goto(`./#s=${scenarioToLink(scenario)}`)
  await page.getByRole('navigation', { name: 'Views' }).getByRole('button', { name: 'Live', exact: true }).click()
  await page.getByRole('group', { name: 'Strategy' }).getByRole('radio', { name: strategy }).check({ force: true })
}

async function turn(page: Page, path: string, value: string): Promise<string> {
  const field = page.locator(`[id="${path}"]`)
  const before = await field.inputValue()
  await field.fill(value)
  await field.press('Enter')
  return before
}

/** Paused, in both colours and on a narrow page. */
async function fits(page: Page, what: string, first: string) {
  await press(page, 'Pause')
  for (const theme of ['Light', 'Dark'] as const) {
    await page.getByRole('group', { name: 'Theme' }).getByRole('radio', { name: theme }).check({ force: true })
    await audit(page, `${what}, ${theme}`, rulesFor(theme === 'Light' ? 'light' : 'dark'))
  }
  await page.setViewportSize({ width: 390, height: 844 })
  expect(await sideways(page)).toBeLessThanOrEqual(0)
  await expect(button(page, first)).toBeInViewport()
  await audit(page, `${what}, narrow`)
}

test('a press seats its bushing, jams in a bore that grips too hard, and takes a new joint', async ({ page }) => {
  await openLive(page, PRESS_PRESETS[0]!, 'bushing', 'Current clamp')
  await expect(sentence(page)).toHaveText('The ram stands back. The bushing waits on its bore.')
  await expect(button(page, 'New joint')).toBeDisabled()
  await press(page, 'Press')
  await expect(sentence(page)).toHaveText(/The bushing sits on its shoulder at 12\.2\smm\.$/)
  await expect.poll(() => reading(page, 'Force of the ram')).toBeGreaterThan(1900)
  await press(page, 'Draw back')
  await expect(sentence(page)).toHaveText(/^The ram stands back\. The bushing sits on its shoulder/)
  await press(page, 'New joint')
  await expect(sentence(page)).toHaveText('The ram stands back. The bushing waits on its bore.')
  const fit = await turn(page, 'bushing.interference', '40')
  await press(page, 'Press')
  await expect(sentence(page)).toHaveText(
    /^The ram presses and stands still\. The bushing is jammed at [\d.]+\smm of 12\.2\smm\.$/,
  )
  await turn(page, 'bushing.interference', fit)
  await expect(sentence(page)).toHaveText(/The bushing sits on its shoulder/)
  await press(page, 'Cut the power')
  await expect(sentence(page)).toContainText('No power: the windings are')
  await expect(button(page, 'Draw back')).toBeDisabled()
  await press(page, 'Restore the power')
  await fits(page, 'press', 'Press')
})

test('a head tightens a lid, turns it off again, strips it, and takes the next jar', async ({ page }) => {
  await openLive(page, CAP_PRESETS[0]!, 'closure', 'Current clamp')
  await expect(sentence(page)).toHaveText('The head is back. The closure is not on its thread yet.')
  await press(page, 'Tighten')
  await expect(sentence(page)).toHaveText(/^Tightening\. The closure presses its liner with 3\d\d\sN\.$/)
  await press(page, 'Turn back')
  await expect(sentence(page)).toHaveText('The head is back. The closure is off its thread again.')
  await press(page, 'Tighten')
  await expect(sentence(page)).toHaveText(/^Tightening\. The closure presses its liner/)
  await press(page, 'Let go')
  await expect(sentence(page)).toHaveText(/^The head is back\. .*The chuck has let go of it\.$/)
  await expect(button(page, 'Tighten')).toBeDisabled()
  await press(page, 'New jar')
  const strong = await turn(page, 'closure.stripTorque', '2')
  await press(page, 'Tighten')
  await expect(sentence(page)).toContainText('The thread of the closure has stripped.')
  await turn(page, 'closure.stripTorque', strong)
  await press(page, 'Turn back')
  await expect(sentence(page)).toContainText('The head is back.')
  await press(page, 'New jar')
  await expect(sentence(page)).toHaveText('The head is back. The closure is not on its thread yet.')
  await fits(page, 'cap', 'Tighten')
})

test('a web is pulled taut, runs, tears, hangs slack and is threaded anew', async ({ page }) => {
  await openLive(page, WEB_PRESETS[1]!, 'web', 'Current clamp')
  await expect(page.getByRole('group', { name: 'Strategy' }).getByRole('radio')).toHaveCount(2)
  await expect(sentence(page)).toHaveText(/^The roll stands\. The web hangs slack by 10\smm; the line stands\.$/)
  await press(page, 'Pull taut')
  await expect(sentence(page)).toHaveText('Pulling. The web is taut; the line stands.')
  await press(page, 'Run')
  await expect(sentence(page)).toHaveText(/^Pulling\. The web is taut; the line runs at 600\smm\/s\.$/)
  await expect.poll(() => reading(page, 'Tension')).toBeGreaterThan(15)
  await expect(button(page, 'Run')).toBeDisabled()
  const strong = await turn(page, 'web.breakTension', '10')
  await expect(sentence(page)).toContainText('The web has torn; the line runs')
  await expect(button(page, 'New web')).toBeDisabled()
  await press(page, 'Stop')
  await expect(sentence(page)).toContainText('The web has torn; the line stands.')
  await turn(page, 'web.breakTension', strong)
  await press(page, 'New web')
  await expect(sentence(page)).toHaveText(/^The roll stands\. The web hangs slack by 10\smm; the line stands\.$/)
  await fits(page, 'web', 'Pull taut')
})
