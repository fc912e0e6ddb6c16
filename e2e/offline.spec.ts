import { expect, test } from '@playwright/test'

test('opens without a network after the first visit, still isolated, and can be installed', async ({
  page,
  context,
}) => {
  const foreign: string[] = []
  page.on('request', (request) => {
    const { protocol, hostname } = new URL(request.url())
    if (protocol.startsWith('http') && hostname !== '127.0.0.1') foreign.push(request.url())
  })
  await page.goto('./')
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null)
  const devtools = await context.newCDPSession(page)
  const { installabilityErrors } = await devtools.send('Page.getInstallabilityErrors')
  // Test pages are private windows; that is the only hindrance.
  expect(installabilityErrors.map((error) => error.errorId)).toEqual(['in-incognito'])

  await context.setOffline(true)
  await page.goto('./?again')
  await expect(page).toHaveTitle(/Jawbench/)
  await expect(page.getByRole('heading', { name: 'Bench', exact: true })).toBeAttached()
  expect(await page.evaluate(() => crossOriginIsolated)).toBe(true)
  expect(await page.evaluate(async () => (await fetch('icon-192.png')).ok)).toBe(true)
  expect(foreign).toEqual([])
})
