import type { Page } from '@playwright/test'
import { audit, expect, openBench, sideways, test } from './support.ts'

/** The bench has finished its runs, and the note its counter-runs. */
async function openModel(page: Page) {
  await openBench(page)
  await page.getByRole('navigation', { name: 'Views' }).getByText('Model', { exact: true }).click()
  await ready(page)
}

const ready = (page: Page) => expect(page.getByText(/^\d+ counter-runs made\.$/)).toBeVisible()

const table = (page: Page, name: string) => page.getByRole('table', { name })

test('every equation is set, with a size of its own', async ({ page }) => {
  await openModel(page)
  const boxes = await page.locator('.equation math').evaluateAll((all) =>
    all.map((math) => {
      const { width, height } = math.getBoundingClientRect()
      return { width, height, text: math.textContent ?? '' }
    }),
  )
  expect(boxes.length).toBeGreaterThan(60)
  for (const { width, height, text } of boxes) {
    expect(width, text).toBeGreaterThan(20)
    expect(height, text).toBeGreaterThan(10)
    expect(text).not.toMatch(/[\\$_]/)
  }
  // A fraction stands two lines high: the browser lays MathML out, it does not write it in a row.
  const inRow = boxes.find(({ text }) => text.startsWith('Q='))!
  const fraction = page.locator('.equation math:has(mfrac)').first()
  expect((await fraction.boundingBox())!.height).toBeGreaterThan(1.4 * inRow.height)
  const written = await page.locator('.model-note p').allTextContents()
  expect(written.filter((text) => /\$|\\[a-z]/.test(text))).toEqual([])
})

test('the figures are those of the scenario and follow units and strategy', async ({ page }) => {
  await openModel(page)
  const width = table(page, 'Symbols: Frame and signs').getByRole('row', { name: /Width/ })
  await expect(width).toContainText('118')
  await expect(width).toContainText('mm')
  const steps = table(page, 'Step error of the runs on the bench')
  await expect(steps.getByRole('row')).toHaveCount(4)
  await expect(
    steps
      .getByRole('row', { name: /Current clamp/ })
      .getByRole('cell')
      .last(),
  ).not.toHaveText('—')
  const pads = table(page, 'Counter-runs: Pads are linear springs')
  const before = await pads.textContent()
  expect(before).toContain('Peak force N')

  await page.getByText('US', { exact: true }).click()
  await expect(width).toContainText('4.64567')
  await expect(width).toContainText('in')
  await expect(pads).toContainText('Peak force lbf')
  await page.getByText('SI', { exact: true }).click()

  await page.getByRole('combobox', { name: 'Strategy' }).selectOption('Sensed force')
  await ready(page)
  await expect(table(page, 'Counter-runs: Linear gauge')).toContainText('reads less')
  await expect.poll(() => pads.textContent()).not.toBe(before)

  await page.getByRole('button', { name: 'Presets' }).click()
  await page.getByRole('menuitem', { name: /bauble/i }).click()
  await ready(page)
  await expect(width).not.toContainText('118')
  await expect(page.getByRole('region', { name: 'One coefficient in thread or gear' })).toContainText('Does not apply')
})

test('the contents lead to every heading by keyboard and leave the address as it is', async ({ page }) => {
  await openModel(page)
  const address = page.url()
  const links = page.getByRole('navigation', { name: 'Contents' }).getByRole('link')
  for (const name of ['Friction of the axis', 'Sources']) {
    await links.filter({ hasText: name }).focus()
    await page.keyboard.press('Enter')
    const heading = page.getByRole('heading', { name, exact: true })
    await expect(heading).toBeInViewport()
    await expect(heading).toBeFocused()
  }
  expect(page.url()).toBe(address)
  expect(await links.count()).toBe(await page.locator('.model-note h2').count())
})

test('passes axe, light and dark; at 390 px equations scroll in their box and the page does not', async ({ page }) => {
  await openModel(page)
  // Thousands of letters in equations take their time: one section stands for those of the others.
  await audit(page, 'equations', (axe) => axe.include('section[aria-labelledby="model-friction"]'))
  const rest = (what: string) => audit(page, what, (axe) => axe.exclude('math'))
  await rest('light')
  await page.emulateMedia({ colorScheme: 'dark' })
  await rest('dark')
  await page.setViewportSize({ width: 390, height: 844 })
  await expect(page.getByRole('navigation', { name: 'Contents' }).getByText('Contents')).toBeVisible()
  const wide = page.locator('.equation[tabindex]')
  await expect(wide).not.toHaveCount(0)
  expect(await wide.evaluateAll((boxes) => boxes.every((box) => box.scrollWidth > box.clientWidth))).toBe(true)
  expect(await sideways(page)).toBeLessThanOrEqual(0)
  await rest('narrow')
})

test('prints the whole note and nothing of the frame around it', async ({ page }) => {
  await openModel(page)
  const pages = (pdf: Buffer) => pdf.toString('latin1').match(/\/Type \/Page\b/g)?.length ?? 0
  expect(pages(await page.pdf({ format: 'A4' }))).toBeGreaterThan(10)
  await page.emulateMedia({ media: 'print' })
  await expect(page.getByRole('banner')).toBeHidden()
  await expect(page.getByRole('navigation', { name: 'Contents' })).toBeHidden()
  await expect(page.getByRole('heading', { name: 'Sources' })).toBeVisible()
})
