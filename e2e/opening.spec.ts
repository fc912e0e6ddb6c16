import { gzipSync } from 'node:zlib'
import { expect, settled, test } from './support.ts'

/** What the scripts of the first view come to at most, compressed [kB]: what is reached, and never more. */
const MOST = 200

test('the first view loads no more script than it did', async ({ page }) => {
  const bodies = new Map<string, Promise<Buffer>>()
  page.on('response', (response) => {
    const { pathname } = new URL(response.url())
    if (pathname.endsWith('.js') && !pathname.includes('.worker-')) bodies.set(pathname, response.body())
  })
  await page.goto('./')
  await settled(page)
  await page.waitForLoadState('networkidle')
  const sizes = await Promise.all([...bodies].map(async ([path, body]) => [path, gzipSync(await body).length / 1000]))
  const sum = sizes.reduce((total, [, size]) => total + Number(size), 0)
  expect(sizes.length, 'scripts that were seen').toBeGreaterThan(3)
  expect(sum, JSON.stringify(sizes)).toBeLessThan(MOST)
})
