import { card, expect, openBench, test, verdict } from './support.ts'

const LONGEST = JSON.stringify({ name: 'The longest duty', run: { duration: 600, cycle: 600 } })

test('the longest run shows signs of life and can be stopped and run again, and nobody calls it dead', async ({
  page,
}) => {
  await openBench(page)
  const chooser = page.waitForEvent('filechooser')
  await page.getByRole('button', { name: 'Open', exact: true }).click()
  await (await chooser).setFiles({ name: 'long.json', mimeType: 'application/json', buffer: Buffer.from(LONGEST) })
  for (const strategy of ['Threshold stop', 'Current clamp']) {
    await expect(card(page, strategy).getByText(/\d+ %, about \d+ (s|min|h) left/)).toBeVisible()
    await card(page, strategy).getByRole('button', { name: 'Stop this run' }).click()
    await expect(verdict(page, strategy)).toHaveText('Stopped')
    await expect(card(page, strategy).locator('.reason')).toHaveText(
      /^The run has no result: it was stopped at \d+ %\.$/,
    )
  }
  await card(page, 'Current clamp').getByRole('button', { name: 'Run it again' }).click()
  await expect(card(page, 'Current clamp').getByText(/\d+ %, about/)).toBeVisible()
  await expect(page.getByText('The simulator had stopped')).toHaveCount(0)
})
