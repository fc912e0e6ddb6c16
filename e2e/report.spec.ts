import { spawnSync } from 'node:child_process'
import type { Page } from '@playwright/test'
import { extractText, getDocumentProxy } from 'unpdf'
import { scenarioToLink } from '../app/store/link.ts'
import { type Edit, editScenario, PRESETS, STRATEGIES } from '../sim/index.ts'
import { audit, card, expect, openBench, sideways, test } from './support.ts'

const teapot = PRESETS[0]!.scenario

const linkTo = (...edits: Edit[]) => {
  const checked = editScenario(teapot, edits)
  if (!checked.ok) throw new Error(checked.faults[0]?.path)
  return `./#s=${scenarioToLink(checked.scenario)}`
}

const sheet = (page: Page) => page.locator('article.report')
const complete = (page: Page) => expect(page.getByRole('status').getByText('The report is complete.')).toBeVisible()

async function openReport(page: Page, address = './') {
  await page.goto(address)
  await page.getByRole('navigation').getByText('Report', { exact: true }).click()
  await complete(page)
}

/** Size of the pages [mm], and their words without any blanks, which a PDF sets as it likes. */
async function print(page: Page) {
  const pdf = await getDocumentProxy(new Uint8Array(await page.pdf({ preferCSSPageSize: true })))
  const { text } = await extractText(pdf)
  const [, , width, height] = (await pdf.getPage(1)).view as [number, number, number, number]
  const millimetres = (points: number) => Math.round((points / 72) * 25.4)
  return { size: [millimetres(width), millimetres(height)], pages: text.map(squeeze) }
}

const squeeze = (text: string) => text.replaceAll('\u2212', '-').replaceAll(/[\s\u200b]/g, '')

test('prints one page of A4 with the figures of the command line', async ({ page }) => {
  const { stdout } = spawnSync(process.execPath, ['.tools/jawbench.mjs', 'grip', 'teapot'], { encoding: 'utf8' })
  await openReport(page)
  const { size, pages } = await print(page)
  expect(size).toEqual([210, 297])
  expect(pages.length).toBe(1)
  const [words = ''] = pages
  const rows = stdout.split('\n').filter((line) => /^[a-z][^:]* (\[.*\])? +\S+ +\S+ +\S+$/.test(line))
  expect(rows.length).toBeGreaterThan(20)
  for (const row of rows) {
    const [, label = '', unit = '', cells = ''] = /^(.*?) (?:\[(.*)\])? +(\S+ +\S+ +\S+)$/.exec(row) ?? []
    if (/[—]/.test(cells)) continue
    const heading = label.trim().charAt(0).toUpperCase() + label.trim().slice(1)
    if (heading !== 'Verdict') expect(words).toContain(squeeze(`${heading}${unit}${cells}`))
  }
  const reasons = stdout.split('\n').flatMap((line) => /^[a-z]+-[a-z]+: (.*)$/.exec(line)?.[1] ?? [])
  expect(reasons.length).toBe(STRATEGIES.length)
  for (const reason of reasons) expect(words).toContain(squeeze(reason))
  for (const text of ['Crushed', 'Momentum of the approach', 'Settings to enter', 'Cautions', 'Checked by'])
    expect(words).toContain(squeeze(text))
  expect(words).not.toContain(squeeze('Print or save as PDF'))
  expect(words).not.toContain('Undo')

  const link = await sheet(page).getByRole('link').getAttribute('href')
  expect(words).toContain(link)
  const other = await page.context().newPage()
  await openBench(other, link ?? '')
  await expect(card(other, 'Threshold stop')).toContainText(reasons[0] ?? '')
})

test('prints letter in US units, black on white also from the dark theme, one page a preset', async ({ page }) => {
  await page.emulateMedia({ colorScheme: 'dark' })
  await openReport(page)
  await page.getByText('US', { exact: true }).click()
  for (const { title } of PRESETS) {
    await page.getByRole('button', { name: 'Presets' }).click()
    await page.getByRole('menuitem', { name: title }).click()
    await expect(sheet(page).getByRole('heading', { level: 1 })).toHaveText(title)
    await complete(page)
    const { size, pages } = await print(page)
    expect(size, title).toEqual([216, 279])
    expect(pages.length, title).toBe(1)
    expect(pages[0], title).toContain('lbf')
  }
  await page.emulateMedia({ media: 'print' })
  const colours = (selector: string) =>
    page.locator(selector).evaluate((element) => {
      const { color, backgroundColor } = getComputedStyle(element)
      return [color, backgroundColor]
    })
  expect(await colours('article.report')).toEqual(['rgb(0, 0, 0)', 'rgb(255, 255, 255)'])
  expect((await colours('html'))[1]).toBe('rgb(255, 255, 255)')
  await expect(page.getByRole('navigation')).toBeHidden()
})

test('the button prints; further pages hold every parameter; the rest of long notes goes there too', async ({
  page,
}) => {
  await page.addInitScript(() => {
    window.print = () => document.body.setAttribute('data-printed', document.title)
  })
  const notes = `${'A long note about the line. '.repeat(30)}The end.`
  await openReport(page, linkTo({ path: 'notes', value: notes }, { path: 'approach.speed', value: 0.03 }))
  await page.getByRole('button', { name: 'Print or save as PDF' }).click()
  await expect(page.locator('body')).toHaveAttribute('data-printed', /^Teapot on a ball screw/)
  await expect(sheet(page)).toContainText('30 mm/s (50 mm/s)')
  await page.getByLabel('Further pages with every parameter').check()
  const { pages } = await print(page)
  expect(pages.length).toBe(2)
  expect(pages[0]).not.toContain('Theend.')
  expect(pages[0]).toContain('Checkedby')
  for (const words of ['The end.', 'Bristle stiffness', 'How each figure is computed'])
    expect(pages[1]).toContain(squeeze(words))
})

test('is honest where there is nothing to show', async ({ page }) => {
  const cases: [string, Edit[], string[]][] = [
    [
      'empty window',
      [{ path: 'part.crackForce', value: 10 }],
      ['No grip force both holds and spares this part', 'no window'],
    ],
    [
      'no contact',
      [
        { path: 'run.duration', value: 0.1 },
        { path: 'arm.moves', value: [] },
      ],
      ['Missed', 'Never touches the part', 'The approach takes'],
    ],
    ['part too heavy', [{ path: 'part.mass', value: 2.9 }], ['Dropped', 'the hardest moment needs', 'of the hold']],
    ['unstable', [{ path: 'servo.kd', value: 3000 }], ['Unstable', 'Leaves its rails', 'unstable']],
  ]
  await openReport(page)
  for (const [name, edits, words] of cases) {
    await page.goto(linkTo(...edits))
    for (const text of words) await expect(sheet(page), name).toContainText(text)
    await complete(page)
    expect((await print(page)).pages.length, name).toBe(1)
    await audit(page, name)
  }
  for (const { label } of STRATEGIES) await page.getByRole('checkbox', { name: label }).uncheck()
  await expect(sheet(page)).toContainText('No strategy is shown')
  await complete(page)
})

test('passes axe, light and dark, wide and at 390 px, where nothing overflows', async ({ page }) => {
  await openReport(page)
  await page.getByLabel('Further pages with every parameter').check()
  for (const scheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: scheme })
    await audit(page, scheme)
  }
  await page.setViewportSize({ width: 390, height: 844 })
  await audit(page, 'narrow')
  expect(await sideways(page)).toBeLessThanOrEqual(0)
})
