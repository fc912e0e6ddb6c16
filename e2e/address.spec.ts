import type { Page } from '@playwright/test'
import { linkOf } from './quick.ts'
import { expect, field, openBench, outcome, settled, test } from './support.ts'

const views = (page: Page) => page.getByRole('navigation', { name: 'Views' })
const open = (page: Page, name: string) => views(page).getByRole('button', { name, exact: true }).click()
const stands = (page: Page, name: string) =>
  expect(views(page).getByRole('button', { name, exact: true })).toHaveAttribute('aria-current', 'page')
const link = (page: Page) => /#s=([^&]*)/.exec(page.url())?.[1]

test('views have addresses: back and forward move between them, the scenario goes along, a reload stays', async ({
  page,
  browser,
}) => {
  await openBench(page)
  const first = await outcome(page)
  await open(page, 'Actuators')
  await expect(page).toHaveURL(/#s=2\.[^&]+&view=actuators$/)
  await open(page, 'Report')
  await expect(page).toHaveURL(/&view=report$/)
  await open(page, 'Bench')
  await expect(page).toHaveURL(/#s=2\.[^&]+$/)
  const mass = await field(page, 'Part', 'Mass')
  await mass.fill('700')
  await mass.press('Enter')
  const edited = await outcome(page)
  expect(edited).not.toEqual(first)

  for (const name of ['Report', 'Actuators', 'Bench']) {
    await page.goBack()
    await stands(page, name)
  }
  expect(await outcome(page), 'going back is no undo').toEqual(edited)
  await page.goForward()
  await stands(page, 'Actuators')
  await page.goForward()
  await stands(page, 'Report')
  await expect(page.getByRole('article').filter({ hasText: 'Grip report' })).toContainText('700 g')

  await page.reload()
  await stands(page, 'Report')
  await expect(page.getByRole('article').filter({ hasText: 'Grip report' })).toContainText('700 g')
  const address = page.url()
  await page.goBack()
  await stands(page, 'Actuators')
  expect(link(page), 'the link to the scenario stays in the address').toBe(/#s=([^&]*)/.exec(address)?.[1])

  const elsewhere = await browser.newContext()
  const second = await elsewhere.newPage()
  await second.goto(address)
  await stands(second, 'Report')
  await open(second, 'Bench')
  expect(await outcome(second)).toEqual(edited)
  await elsewhere.close()
})

test('the customer view is a step of its own, and its slide is in the address', async ({ page }) => {
  await openBench(page)
  await page.getByRole('button', { name: 'Present', exact: true }).click()
  await expect(page).toHaveURL(/&view=present$/)
  await expect(page.getByRole('region', { name: 'The job' })).toBeVisible()
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('PageDown')
  await expect(page).toHaveURL(/&view=present&slide=3$/)
  await page.reload()
  await expect(page.getByRole('region', { name: 'What came of it' })).toBeVisible()
  await page.goBack()
  await stands(page, 'Bench')
  expect(await page.evaluate(() => document.fullscreenElement)).toBeNull()
  await page.goForward()
  await expect(page.getByRole('region', { name: 'Customer view' })).toBeVisible()
  await page.keyboard.press('Escape')
  await stands(page, 'Bench')
  await open(page, 'Model')
  await expect(page).toHaveURL(/&view=model$/)
})

test('a link opened in the running page can be left by back, and a view that does not exist is the bench', async ({
  page,
}) => {
  await openBench(page)
  const name = page.locator('.scenario-name')
  const first = (await name.textContent())!
  await page.getByRole('button', { name: 'Presets' }).click()
  await page.getByRole('menuitem').nth(1).click()
  await settled(page)
  const second = (await name.textContent())!
  await page.getByRole('button', { name: 'Share' }).click()
  const shared = new URL(page.url()).hash
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(name).toHaveText(first)
  await open(page, 'Live')
  await page.evaluate((hash) => {
    location.hash = hash
  }, shared)
  await expect(name).toHaveText(second)
  await stands(page, 'Bench')
  await page.goBack()
  await expect(name).toHaveText(first)
  await stands(page, 'Live')
  await page.goForward()
  await expect(name).toHaveText(second)

  await page.goto('about:blank')
  await page.goto(`./${shared}&view=garden`)
  await stands(page, 'Bench')
  await expect(page).toHaveURL(new RegExp(`${shared}$`))
  await expect(name).toHaveText(second)
})

test.describe('where what packs links cannot be fetched', () => {
  test.use({ noise: /net::ERR_FAILED/ })

  test('the bench works on, says so, and the next try may go well', async ({ page }) => {
    const PACKING = /\/assets\/link-[^/]+\.js$/
    await page.route(PACKING, (route) => route.abort())
    await openBench(page)
    const name = page.locator('.scenario-name')
    const first = (await name.textContent())!
    await page.evaluate((hash) => location.assign(hash), linkOf('teapot').replace('./', ''))
    await expect(page.getByText('What reads links could not be fetched. The bench is as it was.')).toBeVisible()
    await page.getByRole('button', { name: 'Share' }).click()
    await expect(page.getByText('What makes links could not be fetched; save the scenario as a file')).toBeVisible()
    await expect(name).toHaveText(first)
    await page.getByRole('button', { name: 'Presets' }).click()
    await page.getByRole('menuitem').nth(1).click()
    await settled(page)
    const second = (await name.textContent())!
    expect(second).not.toBe(first)
    await page.evaluate((hash) => location.assign(hash), linkOf('teapot').replace('./', ''))
    await expect(page.getByText('What reads links could not be fetched. The bench is as it was.')).toBeVisible()
    await page.goBack()
    await settled(page)
    await expect(name, 'what was edited is not lost by going back').toHaveText(second)

    await page.unroute(PACKING)
    await page.getByRole('button', { name: 'Share' }).click()
    await expect(page).toHaveURL(/#s=2\./)
    await page.reload()
    await expect(name).toHaveText(second)
  })
})
