import type { Page } from '@playwright/test'
import { audit, expect, openBench, rulesFor, settled, sideways, test } from './support.ts'

const VIEWS = ['Bench', 'Live', 'Actuators', 'Loops', 'Lessons', 'Report', 'Model']

const open = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Views' }).getByRole('button', { name, exact: true }).click()

const height = async (page: Page, selector: string) =>
  (await page.locator(selector).boundingBox())?.height ?? Number.NaN

test('at 390 px what matters comes first: the verdicts at once, header and caution in a quarter of the height', async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await openBench(page)
  for (const name of VIEWS) {
    await open(page, name)
    await expect(page.getByRole('heading', { level: 1 }).first()).toBeAttached()
    const share = ((await height(page, '.top')) + (await height(page, '.caution-line'))) / 844
    expect(share, name).toBeLessThanOrEqual(0.25)
    expect(await sideways(page), name).toBeLessThanOrEqual(0)
  }
  await open(page, 'Bench')
  await settled(page)
  const words = page.locator('.verdict .word')
  for (const word of await words.all()) await expect(word).toBeInViewport()
  await page.getByRole('button', { name: 'Second axis' }).click()
  await expect(page.getByRole('menuitem').first()).toBeInViewport({ ratio: 1 })
  await page.keyboard.press('Escape')

  const tools = page.getByRole('button', { name: 'Job and units' })
  await expect(page.getByRole('button', { name: 'Presets' })).toHaveCount(0)
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    await audit(page, `folded, ${colorScheme}`, rulesFor(colorScheme))
    await tools.focus()
    await page.keyboard.press('Enter')
    await audit(page, `tools, ${colorScheme}`, rulesFor(colorScheme))
    await page.getByRole('button', { name: 'Presets' }).focus()
    await page.keyboard.press('Enter')
    await expect(page.getByRole('menuitem').first()).toBeInViewport({ ratio: 1 })
    await page.keyboard.press('Escape')
    await tools.click()
  }
  expect(await sideways(page)).toBeLessThanOrEqual(0)
})

/** Columns that stand beside another one, by their class or tag, with their width [px]. */
const columns = (page: Page) =>
  page.evaluate(() => {
    const view = document.querySelector('#view > *')!
    const blocks = [...view.querySelectorAll<HTMLElement>(':scope > *, :scope > * > *')].filter(
      (element) => element.offsetHeight > 250 && element.offsetWidth > 0,
    )
    const beside = (a: DOMRect, b: DOMRect) =>
      Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 200 && (a.right <= b.left + 1 || b.right <= a.left + 1)
    return blocks
      .filter((block) =>
        blocks.some(
          (other) =>
            other.parentElement === block.parentElement &&
            beside(block.getBoundingClientRect(), other.getBoundingClientRect()),
        ),
      )
      .map((block) => ({ name: block.className || block.tagName, width: block.offsetWidth }))
  })

for (const width of [1280, 1440, 1920])
  test(`with text at 200 % no column is under 300 px, in a window of ${width} px`, async ({ page }) => {
    await page.setViewportSize({ width, height: 900 })
    await openBench(page)
    const usual = await columns(page)
    expect(usual.length, 'columns are found').toBeGreaterThanOrEqual(3)
    await page.addStyleTag({ content: 'html { font-size: 200% }' })
    for (const name of VIEWS) {
      await open(page, name)
      await expect(page.getByRole('heading', { level: 1 }).first()).toBeAttached()
      if (name === 'Lessons') await expect(page.getByRole('button', { name: 'Run it' })).toBeVisible()
      for (const column of await columns(page))
        expect(column.width, `${name}: ${column.name}`).toBeGreaterThanOrEqual(300)
      expect(await sideways(page), name).toBeLessThanOrEqual(0)
    }
  })
