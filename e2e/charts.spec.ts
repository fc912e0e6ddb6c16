import type { Locator, Page } from '@playwright/test'
import { audit, expect, openBench, rulesFor, sideways, test } from './support.ts'

const force = (page: Page) => page.getByRole('slider', { name: 'Grip force: time cursor' })
const current = (page: Page) => page.getByRole('slider', { name: 'Current: time cursor' })
const tool = (page: Page, name: string) =>
  page.getByRole('group', { name: 'Tools of the charts: Traces' }).getByRole('button', { name })
const at = async (slider: Locator) => Number(await slider.getAttribute('aria-valuenow'))
const told = (slider: Locator) => slider.getAttribute('aria-valuetext')

/** Ends of what is shown [s]; null: all of it. */
async function shown(slider: Locator): Promise<[number, number] | null> {
  const found = /shown from ([\d.]+)\ss to ([\d.]+)\ss/.exec((await told(slider)) ?? '')
  return found && [Number(found[1]), Number(found[2])]
}

/** Where the curves are drawn, scrolled into sight. */
async function plotOf(slider: Locator) {
  await slider.evaluate((element) => element.scrollIntoView({ block: 'center' }))
  return (await slider.locator('.u-over').boundingBox())!
}

async function drag(page: Page, from: [number, number], to: [number, number]) {
  await page.mouse.move(...from)
  await page.mouse.down()
  await page.mouse.move(...to, { steps: 4 })
  await page.mouse.up()
}

test('dragging zooms all traces to what was dragged over, a double press brings the whole back', async ({ page }) => {
  await openBench(page)
  const { x, y, width } = await plotOf(force(page))
  await drag(page, [x + 0.2 * width, y + 40], [x + 0.4 * width, y + 44])
  await expect.poll(() => shown(force(page))).not.toBeNull()
  const [from, to] = (await shown(force(page)))!
  expect(from).toBeCloseTo(0.3, 2)
  expect(to).toBeCloseTo(0.6, 2)
  expect(await shown(current(page))).toEqual([from, to])

  const before = await at(force(page))
  await page.mouse.click(x + 0.5 * width, y + 40)
  await expect.poll(() => at(force(page))).toBeCloseTo(0.45, 2)
  expect(await at(force(page))).not.toBe(before)
  await force(page).press('ArrowRight')
  expect(await at(force(page))).toBeCloseTo(0.45 + 0.3 / 400, 4)

  await page.mouse.dblclick(x + 0.7 * width, y + 60)
  await expect.poll(() => shown(force(page))).toBeNull()
  expect(await shown(current(page))).toBeNull()
})

test('a frame zooms the values too, and the wheel is left to the page until the chart is pressed', async ({ page }) => {
  await openBench(page)
  const { x, y, width, height } = await plotOf(force(page))
  const looks = () =>
    force(page)
      .locator('canvas')
      .evaluate((canvas: HTMLCanvasElement) => canvas.toDataURL())
  await page.mouse.move(x + 0.5 * width, y + 40)
  await page.mouse.wheel(0, 40)
  await page.keyboard.down('Control')
  await page.mouse.wheel(0, -300)
  await page.keyboard.up('Control')
  await expect.poll(() => shown(force(page))).not.toBeNull()
  await tool(page, 'Whole').click()
  await expect.poll(() => shown(force(page))).toBeNull()

  const whole = await plotOf(force(page))
  await page.mouse.click(whole.x + 0.5 * width, whole.y + 40)
  await page.mouse.wheel(0, -300)
  await expect.poll(async () => (await shown(force(page)))?.[0] ?? 0).toBeGreaterThan(0.1)
  const closer = (await shown(force(page)))!
  await page.mouse.wheel(120, 0)
  await expect.poll(async () => (await shown(force(page)))?.[0]).toBeGreaterThan(closer[0])
  for (let n = 0; n < 4; n++) await page.mouse.wheel(0, 600)
  await expect.poll(() => shown(force(page))).toBeNull()

  const now = await plotOf(force(page)) // the wheel has scrolled the page in the end
  const across: [number, number] = [now.x + 0.3 * width, now.x + 0.5 * width]
  await drag(page, [across[0], now.y + 30], [across[1], now.y + 32])
  await expect.poll(() => shown(force(page))).not.toBeNull()
  const span = await shown(force(page))
  const flat = await looks()
  await force(page).press('0')
  await expect.poll(() => shown(force(page))).toBeNull()
  const { y: there } = await plotOf(force(page)) // the key has put the focus on the chart, which may scroll to it
  await drag(page, [across[0], there + 30], [across[1], there + 0.8 * height])
  await expect.poll(() => shown(force(page))).toEqual(span)
  await expect.poll(looks, 'the same time, other values').not.toBe(flat)
})

test('two cursors tell the difference, by pointer and by key, and the read-out can be taken away', async ({
  page,
  context,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write'])
  await openBench(page)
  const { x, y, width } = await plotOf(force(page))
  await page.mouse.click(x + 0.2 * width, y + 50)
  await page.mouse.move(x + 0.4 * width, y + 50)
  await page.keyboard.down('Shift')
  await page.mouse.down()
  await page.mouse.up()
  await page.keyboard.up('Shift')
  const table = page.getByRole('table', { name: 'Traces at the two cursors' })
  await expect(table).toBeVisible()
  await expect(table.getByRole('columnheader', { name: /Difference 0\.300\ss/ })).toBeVisible()
  const row = table.getByRole('row', { name: /^Grip force, Sensed force/ })
  const cells = (await row.getByRole('cell').allTextContents()).map((text) => Number(text.replace('−', '-')))
  expect(cells[2]).toBeCloseTo(cells[1]! - cells[0]!, 0)

  const second = 0.6
  await force(page).press('x')
  await expect.poll(() => at(force(page))).toBeCloseTo(second, 2)
  await force(page).press('c')
  await expect(page.getByText('Read-out copied.')).toBeAttached()
  const copied = await page.evaluate(() => navigator.clipboard.readText())
  const lines = copied.split('\n').map((line) => line.split('\t'))
  expect(lines[0]?.[0]).toBe('Time')
  const sensed = lines.find(([chart, line]) => chart === 'Grip force' && line === 'Sensed force')!
  expect(Number(sensed[4]) - Number(sensed[3])).toBeCloseTo(Number(sensed[5]), 3)

  await force(page).press('Escape')
  await expect(table).toBeHidden()
  await force(page).press('+')
  await expect.poll(() => shown(force(page))).not.toBeNull()
  const once = (await shown(force(page)))!
  expect(once[1] - once[0]).toBeCloseTo(1.5 / 1.5, 2)
  for (const key of ['+', '+', '+', 'Home']) await force(page).press(key)
  await expect.poll(async () => (await shown(force(page)))?.[0], 'the cursor is followed').toBe(0)
  await force(page).press('m')
  await expect(table).toBeVisible()
  for (const key of ['Escape', 'Escape']) await force(page).press(key)
  await expect.poll(() => shown(force(page))).toBeNull()
  await tool(page, 'Closer').click()
  await expect.poll(() => shown(force(page))).not.toBeNull()
  await tool(page, 'Farther').click()
  await expect.poll(() => shown(force(page))).toBeNull()
})

test.describe('by touch', () => {
  test.use({ hasTouch: true, viewport: { width: 390, height: 844 } })

  test('two fingers zoom and one moves the cursor', async ({ page, context }) => {
    await openBench(page)
    const { x, y, width } = await plotOf(force(page))
    const client = await context.newCDPSession(page)
    const touch = (type: string, ...places: number[]) =>
      client.send('Input.dispatchTouchEvent', {
        type: type as 'touchStart',
        touchPoints: places.map((share, id) => ({ id, x: x + share * width, y: y + 60 })),
      })
    await touch('touchStart', 0.5)
    await touch('touchEnd')
    await expect.poll(() => at(force(page))).toBeCloseTo(0.75, 1)
    await touch('touchStart', 0.4, 0.6)
    await touch('touchMove', 0.3, 0.7)
    await touch('touchMove', 0.1, 0.9)
    await touch('touchEnd')
    await expect.poll(() => shown(force(page))).not.toBeNull()
    const [from, to] = (await shown(force(page)))!
    expect(to - from).toBeCloseTo(1.5 / 4, 1)
    expect((from + to) / 2).toBeCloseTo(0.75, 1)
    await page.touchscreen.tap(x + 0.3 * width, y + 60)
    await page.touchscreen.tap(x + 0.3 * width, y + 60)
    await expect.poll(() => shown(force(page))).toBeNull()
    expect(await sideways(page)).toBeLessThanOrEqual(0)
  })
})

test('time is even on charts and bar; stretched it is the same however one comes to it', async ({ page }) => {
  await openBench(page)
  const looks = () =>
    page.locator('.traces canvas').evaluateAll((all: HTMLCanvasElement[]) => all.map((canvas) => canvas.toDataURL()))
  const ticks = () =>
    page
      .locator('.time-label')
      .evaluateAll((all) =>
        all.map((tick) => Number.parseFloat(tick.textContent ?? '') / Number(tick.getAttribute('x'))),
      )
  await expect(page.locator('.traces canvas')).toHaveCount(4) // they come after the verdicts
  const even = await looks()
  const places = await ticks()
  for (const place of places.slice(1)) expect(place).toBeCloseTo(places[1]!, 6)
  const stretched = page.getByRole('checkbox', { name: 'Stretched axis' })
  await stretched.check()
  await expect.poll(ticks).not.toEqual(places)
  const bent = await looks()
  for (const [index, look] of bent.entries()) expect(look).not.toBe(even[index])
  await page.reload()
  await openBench(page)
  await expect(stretched).toBeChecked()
  await expect.poll(looks, 'as on a page that began so').toEqual(bent)
  await page.getByRole('checkbox', { name: 'Time lens' }).uncheck()
  await expect(stretched).toBeDisabled()
  await expect.poll(looks, 'and back').toEqual(even)
  expect(await ticks()).toEqual(places)
})

test.describe('play', () => {
  test.use({ firstVisit: true })
  const time = (page: Page) => page.getByRole('slider', { name: 'Time', exact: true })
  const play = (page: Page) => page.locator('.transport .play')

  /** Both at one instant, so that the time is that at which the play begins. */
  const playAndPause = (page: Page) =>
    play(page).evaluate((button: HTMLButtonElement) => {
      button.click()
      button.click()
    })

  test('runs once by itself on the first visit, and begins anew before the contact when it is over', async ({
    page,
  }) => {
    await openBench(page)
    await expect(play(page)).toHaveText('Pause')
    await play(page).click()
    const contact = 0.23
    expect(await at(time(page))).toBeGreaterThan(0)
    await time(page).press('End')
    await playAndPause(page)
    expect(await at(time(page))).toBeLessThan(contact)
    await page.reload()
    await openBench(page)
    await expect(play(page)).toHaveText('Play')
    await expect.poll(() => at(time(page)), 'stands before the drop').toBeGreaterThan(contact)
    const stands = await at(time(page))
    await playAndPause(page)
    expect(await at(time(page))).toBeLessThan(Math.min(stands, contact))
  })

  test('does not begin by itself where motion is not wanted, but can be had', async ({ page }) => {
    await page.emulateMedia({ reducedMotion: 'reduce' })
    await openBench(page)
    await expect.poll(() => at(time(page))).toBeGreaterThan(0.23)
    await expect(play(page)).toHaveText('Play')
    await play(page).click()
    await expect(play(page)).toHaveText('Pause')
  })
})

test('loops: one zoom over magnitude and phase, frequency in both units, a read-out of every curve', async ({
  page,
}) => {
  await page.goto('./')
  await page.getByRole('navigation').getByText('Loops', { exact: true }).click()
  const magnitude = page.getByRole('slider', { name: /^Position loop, open: magnitude/ })
  const phase = page.getByRole('slider', { name: /^Position loop, open: phase/ })
  await expect.poll(() => told(magnitude)).toMatch(/^[\d.]+\srad\/s \([\d.]+\sHz\): /)
  const [, omega, hertz] = /^([\d.]+)\srad\/s \(([\d.]+)\sHz\)/.exec((await told(magnitude))!)!
  expect(Number(omega) / Number(hertz)).toBeCloseTo(2 * Math.PI, 1)
  const { x, y, width } = await plotOf(magnitude)
  await drag(page, [x + 0.4 * width, y + 40], [x + 0.6 * width, y + 44])
  await expect.poll(() => told(phase)).toContain('shown from')
  await phase.press('m')
  await phase.press('PageUp')
  const table = page.getByRole('table', { name: 'Frequency response at the two cursors' })
  await expect(table.getByRole('row', { name: /magnitude/ }).first()).toBeVisible()
  await expect(table.getByRole('columnheader').nth(3)).toHaveText(/^Difference × 0\.\d+$/)
  await phase.press('0')
  await expect.poll(() => told(magnitude)).not.toContain('shown from')
})

test('charts with two cursors pass axe, light, dark and narrow', async ({ page }) => {
  await openBench(page)
  await tool(page, 'Second cursor').click()
  await expect(page.getByRole('table', { name: 'Traces at the two cursors' })).toBeVisible()
  for (const scheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: scheme })
    await audit(page, scheme, rulesFor(scheme))
  }
  await page.setViewportSize({ width: 390, height: 844 })
  await audit(page, 'narrow')
  expect(await sideways(page)).toBeLessThanOrEqual(0)
})
