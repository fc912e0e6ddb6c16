import { readFile } from 'node:fs/promises'
import type { Locator, Page } from '@playwright/test'
import { linkOf } from './quick.ts'
import { audit, expect, field, rulesFor, sideways, test } from './support.ts'

async function openLoops(page: Page) {
  await page.goto('./')
  await page.getByRole('navigation').getByText('Loops', { exact: true }).click()
  await expect(figures(page).getByRole('row')).toHaveCount(5)
}

const figures = (page: Page) => page.getByRole('region', { name: 'Figures at the working points' })
/** The wheel over a chart that has the focus, keys, and two fingers on it, each from the whole and back to it. */
async function handles(page: Page, chart: Locator, looks: () => Promise<string | null>) {
  const whole = await looks()
  const zooms = async (how: string, zoom: () => Promise<unknown>) => {
    await zoom()
    await expect.poll(looks, how).not.toBe(whole)
    await chart.press('0')
    await expect.poll(looks, `back from ${how}`).toBe(whole)
  }
  await chart.focus()
  await chart.evaluate((element) => element.scrollIntoView({ block: 'center' }))
  const { x, y, width, height } = (await chart.boundingBox())!
  await page.mouse.move(x + 0.5 * width, y + 0.5 * height)
  await zooms('the wheel', () => page.mouse.wheel(0, -300))
  await zooms('the key', () => chart.press('+'))
  const client = await page.context().newCDPSession(page)
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...places: number[]) =>
    client.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: places.map((share, id) => ({ id, x: x + share * width, y: y + 0.5 * height })),
    })
  await zooms('two fingers', async () => {
    await touch('touchStart', 0.4, 0.6)
    await touch('touchMove', 0.3, 0.7)
    await touch('touchMove', 0.2, 0.8)
    await touch('touchEnd')
  })
}

const choose = (page: Page, loop: string) =>
  page.getByRole('group', { name: 'Loop' }).getByText(loop, { exact: true }).click()

test('figures, charts and step follow the loop and a slider; an unstable loop prints no margin', async ({ page }) => {
  await openLoops(page)
  const magnitude = page.getByRole('slider', { name: /^Position loop, open: magnitude/ })
  const phase = page.getByRole('slider', { name: /^Position loop, open: phase/ })
  await magnitude.focus()
  await magnitude.press('Home')
  await magnitude.press('PageUp')
  expect(await phase.getAttribute('aria-valuenow')).toBe(await magnitude.getAttribute('aria-valuenow'))
  const nyquist = page.getByRole('slider', { name: /^Nyquist view/ })
  await expect(nyquist).toHaveAccessibleDescription(/Free air: comes within/)
  await nyquist.focus()
  await nyquist.press('ArrowRight')
  await expect(nyquist).toHaveAttribute('aria-valuetext', /rad\/s \(.*Hz\): .* from −1/)
  expect(await magnitude.getAttribute('aria-valuenow')).toBe(await nyquist.getAttribute('aria-valuenow'))
  const curve = nyquist.locator('.curve').first()
  const whole = (await curve.getAttribute('d'))!
  await nyquist.press('+')
  await expect(curve).not.toHaveAttribute('d', whole)
  await nyquist.dblclick()
  await expect(curve).toHaveAttribute('d', whole)
  await handles(page, nyquist, () => curve.getAttribute('d'))
  await nyquist.press('m')
  await nyquist.press('PageUp')
  await expect(page.getByRole('table', { name: 'Frequency response at the two cursors' })).toBeVisible()
  await nyquist.press('Escape')

  const before = await figures(page).textContent()
  const gain = await field(page, 'Servo', 'Derivative gain')
  await gain.press('PageUp')
  await expect.poll(() => figures(page).textContent()).not.toBe(before)
  await gain.fill('800')
  await gain.press('Enter')
  const free = figures(page).getByRole('row', { name: /^Free air/ })
  await expect(free).toContainText('unstable')
  await expect(free.getByRole('cell').nth(2)).toHaveText(/^—/)
  await expect(page.getByText(/doubles every .* No margin exists/).first()).toBeVisible()

  await choose(page, 'Force')
  await expect(
    figures(page)
      .getByRole('row', { name: /^Free air/ })
      .getByRole('cell')
      .nth(1),
  ).toHaveText(/^— .*no crossover/)
})

test('curves, step and figures follow a slider while it is dragged; the drag is one undo step', async ({ page }) => {
  await openLoops(page)
  await field(page, 'Servo', 'Derivative gain')
  const scale = page.locator('.field', { has: page.locator('[id="servo.kd"]') }).locator('.scale')
  // To the middle: at its lower edge the panel's note may lie over a field.
  await scale.evaluate((element) => element.scrollIntoView({ block: 'center' }))
  const { x, y, width, height } = (await scale.boundingBox())!
  const magnitude = page.getByRole('slider', { name: /^Position loop, open: magnitude/ })
  const step = page.getByRole('slider', { name: /^Position loop: step response/ })
  for (let n = 0; n < 8; n++) await step.press('PageUp')
  const told = async () => [
    await magnitude.getAttribute('aria-valuetext'),
    await step.getAttribute('aria-valuetext'),
    await figures(page).textContent(),
  ]
  await page.mouse.move(x + 0.5 * width, y + height / 2)
  await page.mouse.down()
  const seen = [await told()]
  for (const place of [0.55, 0.6]) {
    await page.mouse.move(x + place * width, y + height / 2, { steps: 4 })
    for (const index of [0, 1, 2]) await expect.poll(async () => (await told())[index]).not.toBe(seen.at(-1)![index])
    seen.push(await told())
  }
  await page.mouse.up()
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled()
})

test('the simulated step lies on the linear one, and says what is not linear', async ({ page }) => {
  await openLoops(page)
  const rows = page.getByRole('table').filter({ hasText: 'Not linear' }).getByRole('row')
  const offBy = async () => Number(await rows.nth(1).getByRole('cell').nth(1).textContent())
  await expect(rows).toHaveCount(5)
  expect(await offBy()).toBeLessThan(5)
  const large = page.getByRole('spinbutton', { name: 'Step, over the automatic one' })
  await large.fill('50')
  await large.press('Enter')
  await expect(rows.nth(1)).toContainText('current limit')
  await large.fill('1')
  await large.press('Enter')
  await page.getByRole('group', { name: 'Simulated step' }).getByText('Friction on').click()
  await expect(page.getByText('simulated with dry friction')).toBeVisible()
  await expect.poll(offBy).toBeGreaterThan(5)
  await choose(page, 'Force')
  await expect(rows).toHaveCount(4)
  await expect(rows.nth(1)).toContainText('dead band')
  await page.getByRole('group', { name: 'Simulated step' }).getByText('None').click()
  await expect(rows).toHaveCount(0)
})

test('designed gains go on the bench in one step and one undo takes them back', async ({ page }) => {
  await openLoops(page)
  const method = page.getByRole('article', { name: 'SIMC, double integrator' })
  await expect(method).toContainText('Skogestad')
  const before = await method.getByRole('row').allTextContents()
  await method.getByRole('button', { name: /^Use these/ }).click()
  await expect(method.getByRole('button', { name: /^Use these/ })).toBeDisabled()
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect.poll(() => method.getByRole('row').allTextContents()).toEqual(before)
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled()
})

test('robust tune: stopped, searched, picked by keyboard and mouse, used, undone', async ({ page }) => {
  await openLoops(page)
  const tune = page.getByRole('region', { name: 'Robust tune' })
  // A search may be over before a slow hand finds the button.
  await tune.getByRole('button', { name: 'Search' }).evaluate(async (button: HTMLButtonElement) => {
    button.click()
    while (button.textContent !== 'Stop') await new Promise(requestAnimationFrame)
    button.click()
  })
  await expect(tune.getByText(/^Stopped after \d+ of/)).toBeVisible()

  await tune.getByRole('button', { name: 'Search' }).focus()
  await page.keyboard.press('Enter')
  await expect(tune.getByText(/^\d+ tried\. \d+ are sound\.$/)).toBeVisible()
  const curve = tune.getByRole('slider', { name: 'Trade-off of grip time and peak force' })
  await expect(curve).toHaveAttribute('aria-valuetext', /^1 of \d+, the best: grip time .*\sms, peak force .*\sN$/)
  const gripTime = tune.getByRole('row', { name: /^Grip time/ })
  const best = await gripTime.textContent()
  await curve.press('ArrowRight')
  await expect(curve).toHaveAttribute('aria-valuenow', '2')
  await expect(gripTime).not.toHaveText(best!)
  await curve.press('End')
  await expect(curve).toHaveAttribute('aria-valuenow', (await curve.getAttribute('aria-valuemax'))!)
  await curve.click({ position: { x: 60, y: 20 } })
  await expect(curve).toHaveAttribute('aria-valuenow', '1')
  const front = curve.locator('.front')
  const whole = (await front.getAttribute('points'))!
  await curve.press('+')
  await expect(front).not.toHaveAttribute('points', whole)
  await curve.press('0')
  await expect(front).toHaveAttribute('points', whole)
  await handles(page, curve, () => front.getAttribute('points'))
  await curve.press('m')
  await curve.press('ArrowRight')
  await expect(tune.getByRole('columnheader', { name: 'Difference −1' })).toBeVisible()
  await curve.press('Escape')

  const use = tune.getByRole('button', { name: 'Use these: robust tune' })
  await use.click()
  await expect(use).toBeDisabled()
  await expect(page.getByRole('button', { name: 'Undo' })).toBeEnabled()
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(use).toBeEnabled()
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled()

  await (await field(page, 'Part', 'Mass')).press('PageUp')
  await expect(tune.getByText('Other parameters have changed since this search')).toBeVisible()
})

test('robust tune says what no gains reach', async ({ page }) => {
  await openLoops(page)
  const tune = page.getByRole('region', { name: 'Robust tune' })
  await tune.getByRole('spinbutton', { name: 'Least phase margin' }).fill('89')
  await tune.getByRole('button', { name: 'Search' }).click()
  await expect(tune.getByText(/tried\. None is sound\.$/)).toBeVisible()
  await expect(tune.getByText(/^Not sound: phase margin \(\d+\)/)).toContainText('The largest of those is')
})

test('robust tune by the share of parts held asks for something that varies', async ({ page }) => {
  await openLoops(page)
  const tune = page.getByRole('region', { name: 'Robust tune' })
  await tune.getByLabel('Objective').selectOption('Parts held')
  await expect(tune.getByRole('button', { name: 'Search' })).toBeDisabled()
  await expect(tune.getByText('Nothing varies from part to part yet')).toBeVisible()
})

test('settings in drive units: overflow is said, both sheets are saved', async ({ page }) => {
  await openLoops(page)
  const drive = page.getByRole('region', { name: 'Drive units', exact: true })
  await drive.getByText('16 bit', { exact: true }).click()
  await expect(drive.getByRole('cell', { name: /^Overflow: does not fit/ }).first()).toBeVisible()
  for (const [name, part] of [
    ['Settings sheet (Markdown)', '## Cautions'],
    ['Settings (CSV)', 'servo.kp'],
  ] as const) {
    const [download] = await Promise.all([page.waitForEvent('download'), drive.getByRole('button', { name }).click()])
    expect(await readFile(await download.path(), 'utf8')).toContain(part)
  }
})

test('margins follow the sample period that is entered, and every output has its resolution', async ({ page }) => {
  await openLoops(page)
  const drive = page.getByRole('region', { name: 'Drive units', exact: true })
  const margins = drive.getByRole('region', { name: 'Margins as entered' })
  const position = margins.getByRole('row', { name: /^Position/ })
  const before = Number(await position.getByRole('cell').nth(1).textContent())
  await drive.getByRole('spinbutton', { name: 'Sample period' }).fill('1')
  await drive.getByRole('spinbutton', { name: 'Sample period' }).press('Enter')
  await expect(margins).toHaveCount(1)
  await expect.poll(async () => Number(await position.getByRole('cell').nth(1).textContent())).toBeLessThan(before - 10)
  await expect(drive.getByRole('row', { name: /output of the force loop/ })).toContainText('1 mm/s')
})

test('the shown loop goes out as matrices and as a frequency response', async ({ page }) => {
  await openLoops(page)
  await choose(page, 'Force')
  const out = page.getByRole('region', { name: 'For a notebook' })
  const saved = async (name: string) => {
    const [download] = await Promise.all([page.waitForEvent('download'), out.getByRole('button', { name }).click()])
    return readFile(await download.path(), 'utf8')
  }
  const { format, loops } = JSON.parse(await saved('Matrices, poles, zeros'))
  expect(format).toBe('jawbench-loop-models')
  expect(loops).toHaveLength(4)
  for (const { loop, a, b } of loops) expect([loop, a.length]).toEqual(['force', b.length])
  expect(await saved('Frequency response')).toMatch(/^loop,working point,frequency \[rad\/s\],.*\r\nforce,free,/)
})

test('passes axe, light and dark, wide and at 390 px, where nothing overflows; shows US units', async ({ page }) => {
  await openLoops(page)
  await page.getByText('US', { exact: true }).click()
  await expect(page.getByRole('article', { name: 'Bandwidth and damping' })).toContainText('lb')
  await expect(page.getByRole('region', { name: 'Friction' })).toContainText('lbf')
  await expect(page.getByText(/swings against the motor side of .*\slb at/)).toBeVisible()
  await page.getByRole('region', { name: 'Robust tune' }).getByRole('button', { name: 'Search' }).click()
  await expect(page.getByRole('slider', { name: 'Trade-off of grip time and peak force' })).toHaveAttribute(
    'aria-valuetext',
    /lbf$/,
  )
  await expect(page.getByRole('status').filter({ hasText: 'are sound' })).toBeVisible()
  for (const scheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: scheme })
    await audit(page, scheme, rulesFor(scheme))
  }
  await page.setViewportSize({ width: 390, height: 844 })
  await expect(page.getByRole('button', { name: 'Parameters' })).toBeVisible()
  await audit(page, 'narrow')
  expect(await sideways(page)).toBeLessThanOrEqual(0)
})

test('a press, a closure and a web have their own working points, units and words', async ({ page }) => {
  const jobs = [
    { link: linkOf('cast-arm'), rows: 6, effort: 'Force', point: 'On the shoulder', unit: 'mm/(N·s)' },
    { link: linkOf('jar-lid'), rows: 5, effort: 'Torque', point: 'Turning on the liner', unit: 'rad/(N·m·s)' },
    { link: linkOf('tray-film'), rows: 5, effort: 'Tension', point: 'Nominal web, running', unit: 'rad/(N·s)' },
  ]
  for (const { link, rows, effort, point, unit } of jobs) {
    await page.goto(link)
    await page.reload()
    await page.getByRole('navigation').getByText('Loops', { exact: true }).click()
    await choose(page, effort)
    await expect(figures(page).getByRole('row')).toHaveCount(1 + rows)
    await expect(
      figures(page)
        .getByRole('row', { name: new RegExp(`^${point}`) })
        .first(),
    ).toContainText('yes')
    const design = page.getByRole('region', { name: 'Gain design' })
    await expect(design.getByRole('heading', { name: `${effort} loop: gains` })).toBeVisible()
    const method = design.getByRole('article', { name: 'Margin over the stiffness range' })
    await expect(method.getByRole('row', { name: /^(Sliding|Running)/ })).toHaveCount(1)
    await expect(method.getByRole('row', { name: /^Proportional gain/ })).toContainText(unit)
    await expect(page.getByRole('region', { name: 'Settings in drive units' })).toContainText(`${effort}, proportional`)
  }
})
