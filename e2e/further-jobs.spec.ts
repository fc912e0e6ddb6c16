/** Jobs other than gripping are no part of the first view: they come when one is asked for, and where they do not come that is said. */
import type { Page } from '@playwright/test'
import { linkOf } from './quick.ts'
import { expect, openBench, test } from './support.ts'

const OTHERS = /\/assets\/others-[^/]+\.js$/

const hashOf = (id: string) => linkOf(id).replace('./', '')
/** Waits until the browser keeps what is on the bench. */
const kept = (page: Page) =>
  expect.poll(() => page.evaluate(() => localStorage.getItem('jawbench.scenario'))).not.toBeNull()

const FILE = {
  name: 'press.json',
  mimeType: 'application/json',
  buffer: Buffer.from('{"job":"press","name":"From a file"}'),
}

test('come with the menu of presets, with a link in the running page and with a file', async ({ page }) => {
  const fetched: string[] = []
  page.on('request', (request) => {
    if (OTHERS.test(request.url())) fetched.push(request.url())
  })
  await openBench(page)
  expect(fetched).toEqual([])

  await page.evaluate((hash) => location.assign(hash), hashOf('jar-lid'))
  await expect(page.getByRole('banner')).toContainText('jar', { ignoreCase: true })
  await expect(page.getByRole('article').first()).toContainText('Tight')
  expect(fetched.length).toBeGreaterThan(0)
  await page.goBack()
  await expect(page.getByRole('article').first()).not.toContainText('Tight')

  await page.reload()
  await page.getByRole('button', { name: 'Presets' }).focus()
  await page.keyboard.press('Enter')
  await page.keyboard.press('End')
  await page.getByRole('menuitem', { name: /film/i }).click()
  await expect(page.getByRole('article', { name: 'Current clamp' })).toContainText(/Taut|Slack|Stretched/)

  await openBench(page, linkOf('teapot'))
  await page.locator('input[type=file]').setInputFiles(FILE)
  await expect(page.getByRole('banner')).toContainText('From a file')
})

test.describe('where they cannot be fetched', () => {
  test.use({ noise: /net::ERR_FAILED/ })

  test('the bench stays as it was, says so, and the next try may go well', async ({ page }) => {
    await openBench(page)
    const before = await page.getByRole('banner').textContent()
    await page.route(OTHERS, (route) => route.abort())
    await page.locator('input[type=file]').setInputFiles(FILE)
    await expect(page.getByText('a job whose description could not be fetched')).toBeVisible()
    await page.keyboard.press('Escape')
    await page.evaluate((hash) => location.assign(hash), hashOf('jar-lid'))
    await expect(page.getByText('The job of this link could not be fetched. The bench is as it was.')).toBeVisible()
    await page.getByRole('button', { name: 'Presets' }).click()
    await expect(page.getByRole('menuitem').first()).toBeVisible()
    await page.keyboard.press('Escape')
    expect(await page.getByRole('banner').textContent()).toBe(before)

    await page.getByLabel('Actuator', { exact: true }).selectOption({ label: 'Voice coil' })
    await expect(page.getByText('The drawing of this axis could not be fetched.')).toHaveCount(3)
    await expect(page.getByRole('article', { name: 'Current clamp' })).toContainText('Held')
    await page.getByRole('button', { name: 'Undo' }).click()

    await page.unroute(OTHERS)
    await page.locator('input[type=file]').setInputFiles(FILE)
    await expect(page.getByRole('banner')).toContainText('From a file')
  })

  test('a page that was left with one says so, and has it when it is loaded again', async ({ page }) => {
    await page.goto(linkOf('cast-arm'))
    await expect(page.getByRole('article').first()).toHaveAttribute('aria-busy', 'false')
    const name = await page.getByRole('banner').textContent()
    await kept(page)
    await page.goto('about:blank')
    await page.route(OTHERS, (route) => route.abort())
    await page.goto('./')
    await expect(page.getByRole('alert')).toContainText('What was on the bench could not be fetched.')
    await page.unroute(OTHERS)
    await page.reload()
    await expect(page.getByRole('article').first()).toHaveAttribute('aria-busy', 'false')
    expect(await page.getByRole('banner').textContent()).toBe(name)
  })
})

test('a page that was left with one opens with it again', async ({ page }) => {
  await page.goto(linkOf('cast-arm'))
  await expect(page.getByRole('article').first()).toHaveAttribute('aria-busy', 'false')
  const name = await page.getByRole('banner').textContent()
  await kept(page)
  await page.goto('about:blank')
  await page.goto('./')
  await expect(page.getByRole('article').first()).toHaveAttribute('aria-busy', 'false')
  expect(await page.getByRole('banner').textContent()).toBe(name)
})
