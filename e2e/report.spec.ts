import { spawnSync } from 'node:child_process'
import type { Page } from '@playwright/test'
import { extractText, getDocumentProxy } from 'unpdf'
import { scenarioToLink } from '../app/store/link.ts'
import { type Edit, editScenario, PRESETS, STRATEGIES } from '../sim/index.ts'
import { audit, expect, rulesFor, sideways, test } from './support.ts'

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

/** One report for all of these: to work it out takes longer than to look at it. */
test('of the opening preset', async ({ page }) => {
  await test.step('prints nothing but a word of waiting until all has been worked out', async () => {
    await page.goto('./')
    await page.getByRole('navigation').getByText('Report', { exact: true }).click()
    await expect(page.getByText(/^Being worked out: /)).toBeVisible()
    await expect(page.getByRole('button', { name: 'Print or save as PDF' })).toBeDisabled()
    await page.emulateMedia({ media: 'print' })
    await expect(page.locator('.report-waits')).toBeVisible()
    await expect(sheet(page)).toBeHidden()
    await page.emulateMedia({ media: 'screen' })
    await complete(page)
    await page.emulateMedia({ media: 'print' })
    await expect(sheet(page)).toBeVisible()
    await expect(page.locator('.report-waits')).toBeHidden()
    await page.emulateMedia({ media: null })
  })

  await test.step('prints one page of A4 with the figures of the command line', async () => {
    const { stdout } = spawnSync(process.execPath, ['.tools/jawbench.mjs', 'grip', 'teapot'], { encoding: 'utf8' })
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
      // Words above the figures, not among them.
      if (!['Verdict', 'Overloaded'].includes(heading)) expect(words).toContain(squeeze(`${heading}${unit}${cells}`))
    }
    const reasons = stdout.split('\n').flatMap((line) => /^[a-z]+-[a-z]+: (.*)$/.exec(line)?.[1] ?? [])
    expect(reasons.length).toBe(STRATEGIES.length)
    for (const reason of reasons) expect(words).toContain(squeeze(reason))
    for (const text of ['Crushed', 'Momentum of the approach', 'Settings to enter', 'Cautions', 'Checked by'])
      expect(words).toContain(squeeze(text))
    expect(words).not.toContain(squeeze('Print or save as PDF'))
    expect(words).not.toContain('Undo')

    // Recommended, why, and what is entered for it alone; the gripper in section; how to come to the same figures.
    for (const text of [
      'RecommendedSensed force',
      'keeps as far from its nearest edge',
      'Threshold stop is out: crushed',
      'simulated',
    ])
      expect(words).toContain(squeeze(text))
    expect(words).toContain(squeeze('Settings to enter, sensed force'))
    expect(words).not.toContain(squeeze('Confirm time'))
    await expect(sheet(page).locator('.report-picture svg')).toHaveCount(1)
    expect(words).toContain(squeeze('jawbench grip teapot'))
    expect(words).not.toContain('127.0.0.1')
    const json = spawnSync(process.execPath, ['.tools/jawbench.mjs', 'grip', 'teapot', '--format', 'json'], {
      encoding: 'utf8',
    })
    const { results } = JSON.parse(json.stdout) as { results: { hash: string }[] }
    expect(results.length).toBe(STRATEGIES.length)
    for (const { hash } of results) expect(words).toContain(hash)
  })

  await test.step('passes axe, light and dark, wide and at 390 px, where nothing overflows', async () => {
    await page.getByLabel('Further pages with every parameter').check()
    for (const scheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme: scheme })
      await audit(page, scheme, rulesFor(scheme))
    }
    await page.setViewportSize({ width: 390, height: 844 })
    await audit(page, 'narrow')
    expect(await sideways(page)).toBeLessThanOrEqual(0)
    await page.setViewportSize({ width: 1280, height: 720 })
    await page.emulateMedia({ colorScheme: 'light' })
    await page.getByLabel('Further pages with every parameter').uncheck()
  })

  await test.step('another strategy can be handed over, and it says that the figures do not recommend it', async () => {
    await page.getByRole('combobox', { name: 'Hand over' }).selectOption({ label: 'Current clamp' })
    await expect(sheet(page)).toContainText('Handed over')
    await expect(sheet(page)).toContainText('The figures recommend: sensed force.')
    await expect(sheet(page).getByRole('heading', { name: 'Settings to enter, current clamp' })).toBeVisible()
    await page.getByRole('checkbox', { name: 'Current clamp' }).uncheck()
    await page.getByRole('checkbox', { name: 'Sensed force' }).uncheck()
    await expect(sheet(page)).toContainText('No strategy shown holds the part undamaged')
    await expect(sheet(page).getByRole('heading', { name: /Settings to enter/ })).toHaveCount(0)
  })
})

test('keeps to one page, signatures included, whatever the bench can hold', async ({ page }) => {
  const moves = Array.from({ length: 20 }, (_, i) => ({
    start: 0.6 + 0.04 * i,
    axis: 'across',
    acceleration: 2,
    duration: 0.03,
    jerk: 2000,
  }))
  const long = linkTo(
    { path: 'name', value: 'A very long name of a grip '.repeat(7).trim() },
    { path: 'notes', value: 'Each line tells of one pot.\n'.repeat(300) },
    { path: 'arm.moves', value: moves },
    ...[1, 2, 3, 4].map((n) => ({
      path: ['part.mass', 'part.markForce', 'part.yieldForce', 'jaws.padLength'][n - 1]!,
      value: [0.71, 51, 52, 0.031][n - 1],
    })),
  )
  await openReport(page, long)
  for (const units of ['US', 'SI']) {
    await page.getByText(units, { exact: true }).click()
    const { pages } = await print(page)
    expect(pages.length, units).toBe(1)
    for (const words of ['Checked by', 'Left out to keep to one page', 'and 17 more'])
      expect(pages[0], units).toContain(squeeze(words))
  }
  await page.getByLabel('Further pages with every parameter').check()
  const { pages } = await print(page)
  expect(pages[0]).toContain(squeeze('The further pages have it all.'))
  expect(pages.slice(1).join('').split(squeeze('Each line tells of one pot.')).length - 1).toBe(300)
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

test('the button prints; further pages hold every parameter', async ({ page }) => {
  await page.addInitScript(() => {
    window.print = () => document.body.setAttribute('data-printed', document.title)
  })
  await openReport(page, linkTo({ path: 'approach.speed', value: 0.03 }))
  await page.getByRole('button', { name: 'Print or save as PDF' }).click()
  await expect(page.locator('body')).toHaveAttribute('data-printed', /^Teapot on a ball screw/)
  await expect(sheet(page)).toContainText('30 mm/s (50 mm/s)')
  await expect(sheet(page)).toContainText('jawbench grip teapot --set approach.speed=0.03')
  await page.getByLabel('Further pages with every parameter').check()
  const { pages } = await print(page)
  expect(pages.length).toBeGreaterThan(1)
  expect(pages[0]).toContain('Checkedby')
  const further = pages.slice(1).join('')
  for (const words of ['Bristle stiffness', 'How each figure is computed']) expect(further).toContain(squeeze(words))
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
    await page.goto(`${linkTo(...edits)}&view=report`)
    for (const text of words) await expect(sheet(page), name).toContainText(text)
    await complete(page)
    expect((await print(page)).pages.length, name).toBe(1)
    await audit(page, name)
  }
  for (const { label } of STRATEGIES) await page.getByRole('checkbox', { name: label }).uncheck()
  await expect(sheet(page)).toContainText('No strategy is shown')
  await complete(page)
})
