import type { Page } from '@playwright/test'
import { expect, settled, test } from './support.ts'

test.use({ offlineCopy: true })

/** Sets of files that are kept for offline use, with how many files each holds. */
const kept = (page: Page) =>
  page.evaluate(async () =>
    Promise.all((await caches.keys()).map(async (name) => (await (await caches.open(name)).keys()).length)),
  )

test('opens without a network after the first visit, still isolated, and can be installed', async ({
  page,
  context,
}) => {
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
})

test('keeps nothing of a copy that could not be made whole, and makes it at the next visit', async ({
  page,
  context,
}) => {
  const refused = context.waitForEvent('requestfailed', (request) => request.url().endsWith('icon-512.png'))
  await context.route('**/icon-512.png', (route) => route.abort())
  await page.goto('./')
  await settled(page)
  await refused
  await page.waitForFunction(async () => {
    const registration = await navigator.serviceWorker.getRegistration()
    return registration === undefined || !(registration.installing || registration.waiting || registration.active)
  })
  expect(await kept(page)).toEqual([])
  await context.unroute('**/icon-512.png')
  await page.reload()
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null)
  const [files = 0, ...others] = await kept(page)
  expect(files).toBeGreaterThan(20)
  expect(others).toEqual([])
})

const HINDRANCES: [name: string, hinder: () => void][] = [
  ['there are no service workers', () => Reflect.deleteProperty(Navigator.prototype, 'serviceWorker')],
  [
    'service workers are denied by a throw',
    () =>
      Object.defineProperty(Navigator.prototype, 'serviceWorker', {
        get() {
          throw new DOMException('denied', 'SecurityError')
        },
      }),
  ],
  [
    'registering is refused by a throw',
    () => {
      ServiceWorkerContainer.prototype.register = () => {
        throw new DOMException('denied', 'SecurityError')
      }
    },
  ],
  [
    'registering is refused later',
    () => {
      ServiceWorkerContainer.prototype.register = () => Promise.reject(new DOMException('denied', 'SecurityError'))
    },
  ],
  [
    'storage is denied',
    () => {
      for (const name of ['localStorage', 'sessionStorage', 'caches', 'indexedDB'])
        Object.defineProperty(globalThis, name, {
          get() {
            throw new DOMException('denied', 'SecurityError')
          },
        })
    },
  ],
]

for (const [name, hinder] of HINDRANCES)
  test(`the bench works without a word where ${name}`, async ({ page }) => {
    await page.clock.install()
    await page.addInitScript(hinder)
    await page.goto('./')
    await page.clock.runFor(60_000) // past the rest after which the copy for offline use is made
    await settled(page)
    await page.getByRole('button', { name: 'Report', exact: true }).click()
    await page.getByRole('button', { name: 'Bench', exact: true }).click()
    await settled(page)
  })
