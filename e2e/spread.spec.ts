import { audit, expect, sideways, test } from './support.ts'

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
  expect(await sideways(page)).toBeLessThanOrEqual(0)
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
