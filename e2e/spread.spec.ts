import { quickLink } from './quick.ts'
import { audit, card, expect, settled, sideways, test, verdict } from './support.ts'

test('parts that vary are gripped, counted, kept, and any of them goes on the bench', async ({ page }) => {
  await page.goto('./#view=spread')
  await expect(page.getByText('One part of exactly the stated size proves nothing about a thousand.')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Grip them' })).toBeDisabled()

  await page.getByRole('button', { name: 'Take all' }).click()
  await expect(page.getByRole('group', { name: 'Part · Mass' })).toBeVisible()
  await page.getByLabel('Parts', { exact: true }).fill('35')
  await page.getByLabel('Parts', { exact: true }).press('Enter')
  await page.getByRole('button', { name: 'Grip them' }).click()
  const clamp = page.getByRole('article', { name: 'Current clamp' })
  await expect(page.getByRole('button', { name: '35 more' })).toBeVisible()
  await expect(clamp).toContainText(/\d+ of 40 hold \(/) // by whole batches of 20
  await audit(page, 'spread')

  const answer = await clamp.textContent()
  await page.reload()
  await expect(clamp).toBeVisible()
  expect(await clamp.textContent()).toBe(answer)

  await page.getByRole('button', { name: '40 more' }).click()
  await expect(clamp).toContainText(/\d+ of 80 hold \(/)
  await expect(page.getByRole('button', { name: '40 more' })).toBeVisible()

  await page.setViewportSize({ width: 390, height: 844 })
  await expect.poll(() => sideways(page)).toBeLessThanOrEqual(0)
  await audit(page, 'spread, narrow')
  await page.setViewportSize({ width: 1280, height: 720 })

  const worst = page.getByRole('region', { name: 'Single parts' }).getByRole('listitem').first()
  const fate = ((await worst.textContent()) ?? '').match(/Part \d+\s+(\w+)/)![1]!
  await worst.getByRole('button').click()
  await expect(page.getByText(/^Part \d+ of the study is on the bench/)).toBeVisible()
  await expect(page.locator('article[aria-busy="false"]')).toHaveCount(3)
  await expect(page.getByRole('article', { name: 'Threshold stop' })).toContainText(fate, { ignoreCase: true })
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(page.getByRole('article', { name: 'Threshold stop' })).toContainText('Crushed')
})

test('a measured list is pasted; what is no number is said; what varies is undone', async ({ page }) => {
  await page.goto('./#view=spread')
  await page.getByLabel('Let a quantity vary').selectOption('part.mass')
  await page.getByLabel('Law', { exact: true }).selectOption('measured')
  const list = page.getByLabel(/^1 value/)
  await list.fill('mass [g]\n880\n900\n905, 930')
  await page.getByRole('button', { name: 'Take the values' }).click()
  await expect(page.getByText('4 values taken; what is no number was left out (1).')).toBeVisible()
  await expect(page.getByLabel(/^4 values/)).toHaveValue('880, 900, 905, 930')
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(page.getByLabel(/^1 value/)).toBeVisible()
})

test('of the parts that hold seldom fail: how rarely, the likeliest way, and it goes on the bench on loan', async ({
  page,
}) => {
  await page.goto(`${quickLink()}&view=spread`)
  await page.getByLabel('Parts', { exact: true }).fill('40')
  await page.getByLabel('Parts', { exact: true }).press('Enter')
  await page.getByRole('button', { name: 'Grip them' }).click()
  await expect(page.getByRole('button', { name: '40 more' })).toBeVisible()

  const rare = page.getByRole('region', { name: 'Rare failures' })
  await rare.getByLabel('Strategy').selectOption('Sensed force')
  await rare.getByRole('button', { name: 'Search for failures' }).click()
  await rare.getByRole('button', { name: 'Stop' }).click()
  await rare.getByRole('button', { name: 'Search' }).click()
  await expect(rare.getByText(/^About 1 in [\d,]+ parts fails: /)).toBeVisible({ timeout: 1_200_000 })
  await expect(rare.getByText('a second way to fail, far from this one, may be missed')).toBeVisible()
  await audit(page, 'rare failures')

  const drivers = page.getByRole('region', { name: 'What drives the failures' })
  await drivers.getByLabel('Strategy').selectOption('Threshold stop')
  await drivers.getByRole('button', { name: 'Work it out' }).click()
  await expect(drivers.getByText(/^Part · Crack force alone makes .* of the failures, /)).toBeVisible({
    timeout: 1_200_000,
  })
  await drivers.getByLabel('What drives').selectOption('the breaks')
  await expect(drivers.getByText(/^Part · Crack force alone makes .* of the breaks, /)).toBeVisible()

  const tighter = page.getByRole('region', { name: 'What a tighter tolerance buys' })
  await tighter.getByLabel('Strategy').selectOption('Current clamp')
  await tighter.getByLabel('Scatter left').fill('20')
  await tighter.getByLabel('Scatter left').press('Enter')
  await tighter.getByRole('button', { name: 'Try each' }).click()
  await expect(tighter.getByText('Of the same 40 parts, 20.0 % of the scatter left')).toBeVisible()
  await expect(tighter.getByRole('button', { name: 'Try each anew' })).toBeVisible({ timeout: 1_200_000 })
  await expect(tighter.getByRole('listitem')).toHaveCount(2)
  await expect(tighter.locator('.tighter-told')).toBeVisible()
  await audit(page, 'drivers and tolerances')

  const best = page.getByRole('region', { name: 'Best wanted force' })
  await best.getByLabel('Strategy').selectOption('Current clamp')
  await best.getByRole('button', { name: 'Look for it' }).click()
  const want = best.getByRole('button', { name: /^Want .* of current clamp$/ })
  await expect(want).toBeVisible({ timeout: 1_200_000 })
  await want.click()
  await page.getByRole('button', { name: 'Undo' }).click()

  await rare.getByRole('button', { name: 'Put this failure on the bench' }).click()
  await expect(card(page, 'Sensed force')).toHaveAttribute('aria-busy', 'false')
  await expect(verdict(page, 'Sensed force')).not.toHaveText('Held')

  await page.goBack()
  await expect(page.getByText('Here the study’s own values count')).toBeVisible()
  await expect(rare.getByText(/^About 1 in/)).toBeVisible()
  await expect(page.getByRole('group', { name: 'Part · Crack force' })).toContainText('65 N in the file')
  await expect(page.getByRole('button', { name: '40 more' })).toBeVisible()
  await page.reload()
  await page.getByRole('button', { name: 'Put the study’s values back on the bench' }).click()
  await expect(page.getByText('Here the study’s own values count')).toBeHidden()
  await expect(page.getByRole('button', { name: '40 more' })).toBeVisible()
})

test('a map is drawn over two quantities, read by keys, put out as files, and a point of it goes on the bench', async ({
  page,
}) => {
  await page.goto(`${quickLink()}&view=spread`)
  await page.getByText('A map', { exact: true }).click()
  const map = page.getByRole('region', { name: 'Map', exact: true })
  await map.getByLabel('Across').selectOption('Part · Crack force')
  await map.getByLabel('Up').selectOption('Part · Mass')
  await map.getByLabel('Strategy').selectOption('Current clamp')
  await map.getByRole('button', { name: 'Draw the map' }).click()
  await expect(map.getByText(/^grid: \d+ of 1,089 grips$/)).toBeVisible()
  await expect(map.getByText(/^[\d,]+ grips\. Borders are traced/)).toBeVisible({ timeout: 1_200_000 })
  await audit(page, 'map')

  const plot = page.getByRole('application')
  await expect(plot.locator('.map-name')).toContainText(['Crushed', 'Held'])
  await plot.focus()
  for (let n = 0; n < 4; n++) await plot.press('Shift+ArrowRight')
  const told = map.locator('[aria-live="polite"]').last()
  await expect(told).toContainText(/^Crack force \d+\sN, Mass \d+\sg: Held\. Nearest margin [\d.]+\s%/)
  for (let n = 0; n < 4; n++) await plot.press('Shift+ArrowLeft')
  await expect(told).toContainText('Crushed')

  for (const [button, end] of [
    ['Figures as CSV', 'map-current-clamp.csv'],
    ['Picture as PNG', 'map-current-clamp.png'],
  ] as const) {
    const saved = page.waitForEvent('download')
    await map.getByRole('button', { name: button }).click()
    expect((await saved).suggestedFilename()).toContain(end)
  }

  await page.setViewportSize({ width: 390, height: 844 })
  await expect.poll(() => sideways(page)).toBeLessThanOrEqual(0)
  await page.setViewportSize({ width: 1280, height: 720 })

  await plot.focus()
  await plot.press('Enter')
  await expect(page.getByText('A point of the map is on the bench')).toBeVisible()
  await expect(card(page, 'Current clamp')).toHaveAttribute('aria-busy', 'false')
  await expect(verdict(page, 'Current clamp')).toHaveText('Crushed')
  await page.goBack()
  await expect(map.getByText(/^[\d,]+ grips\. Borders are traced/)).toBeVisible()
})

test('on wish the traces carry the band of the parts, which a change takes away and draws anew', async ({ page }) => {
  await page.goto('./')
  const band = page.getByRole('checkbox', { name: 'Band of 100 parts' })
  await expect(page.getByRole('checkbox', { name: 'Stretched axis' })).toBeVisible()
  await expect(band).toBeHidden()

  await page.goto(quickLink())
  await band.check()
  const ready = page.getByText('Pale: where the middle 90 of 100 parts lie at each instant')
  await expect(ready).toBeVisible({ timeout: 120_000 })
  await page.getByRole('spinbutton', { name: 'Wanted grip force' }).press('ArrowUp')
  await expect(page.getByText(/^Gripping 100 parts by each strategy/)).toBeVisible()
  await expect(ready).toBeVisible({ timeout: 120_000 })
  await band.uncheck()
  await expect(ready).toBeHidden()
})

test('a study is shown: a slide of the customer view, and a section of the report on its one page', async ({
  page,
}) => {
  await page.goto(`${quickLink()}&view=spread`)
  await page.getByLabel('Parts', { exact: true }).fill('40')
  await page.getByLabel('Parts', { exact: true }).press('Enter')
  await page.getByRole('button', { name: 'Grip them' }).click()
  await expect(page.getByRole('button', { name: '40 more' })).toBeVisible()
  const share = await page.getByRole('article', { name: 'Sensed force' }).locator('.share-word').textContent()

  await page.getByRole('navigation').getByText('Report', { exact: true }).click()
  const section = page.getByRole('region', { name: 'Of 40 parts' })
  await expect(section).toContainText(`Sensed force: ${share} hold (`)
  await expect(section).toContainText('Scrambled Sobol’ points, seed 1.')

  await page.getByRole('navigation').getByText('Bench', { exact: true }).click()
  await settled(page)
  await page.getByRole('button', { name: 'Present', exact: true }).click()
  for (let n = 0; n < 3; n++) await page.getByRole('button', { name: 'Next' }).click()
  await expect(page.locator('.present-place')).toHaveText('4 of 5: Many parts')
  const slide = page.getByRole('region', { name: 'Many parts', exact: true })
  await expect(slide).toContainText('Of 40 parts that differ as the file says')
  await expect(slide.locator('[data-strategy="sensed-force"] .outcome-word')).toHaveText(share!)
  await audit(page, 'slide of many parts')
})
