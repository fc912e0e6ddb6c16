/** Presses, closures and webs handed to others: the report as it prints, and the customer view from the bench. */
import '../sim/others.ts'
import type { Page } from '@playwright/test'
import { extractText, getDocumentProxy } from 'unpdf'
import { scenarioToLink } from '../app/store/link.ts'
import { ALL_PRESETS, checkScenario, jobOf, shownAs, strategiesOn } from '../sim/index.ts'
import { audit, expect, rulesFor, sideways, test } from './support.ts'

/** A short run of each job, with what its report and its customer view must say. */
const JOBS = [
  {
    id: 'lid-hinge',
    more: { run: { duration: 1.2 } },
    printed: ['Press report', 'Bushing, bore and joint', 'What made the force', 'over depth', 'Presses crush'],
    slides: ['The job', 'The press', 'What came of it', 'Why'],
    fact: /across, .* larger than its bore/,
    word: 'Pressing in',
  },
  {
    id: 'small-lid',
    more: {},
    printed: [
      'Cap report',
      'Closure, thread and liner',
      'What made the torque',
      'over turns on the thread',
      'wind up hair',
    ],
    slides: ['The job', 'The closure', 'What came of it', 'Why'],
    fact: /rev from its start to the liner/,
    word: 'Tightening',
  },
  {
    id: 'tray-film',
    more: {
      run: { duration: 3 },
      line: { radius: 0.04, ramps: [{ start: 1.5, speed: 0.6, acceleration: 2, jerk: 20 }] },
    },
    printed: ['Web report', 'Web, span and rolls', 'What made the tension', 'Ramp 1', 'Threshold stop was not run.'],
    slides: ['The job', 'The web', 'What came of it', 'Why'],
    fact: /300\smm wide, 12\sµm thick/,
    word: 'Pulling',
  },
]

const squeeze = (text: string) => text.replaceAll(/[\s\u200b]/g, '')
const slide = (page: Page, title: string) => page.getByRole('region', { name: title, exact: true })

for (const { id, more, printed, slides, fact, word } of JOBS) {
  const preset = ALL_PRESETS.find((each) => each.id === id)!
  const checked = checkScenario({ ...preset.scenario, ...more })
  if (!checked.ok) throw new Error(`${id}: ${checked.faults[0]?.path}`)
  const { scenario } = checked
  const strategies = strategiesOn(jobOf(scenario)).map(({ label }) => label)
  const link = `./#s=${scenarioToLink(scenario)}`

  test(`the report of ${id} prints on one page, passes axe and holds every key`, async ({ page }) => {
    await page.goto(`${link}&view=report`)
    await expect(page.getByRole('status').getByText('The report is complete.')).toBeVisible({ timeout: 600_000 })
    const print = async () => {
      const pdf = await getDocumentProxy(new Uint8Array(await page.pdf({ preferCSSPageSize: true })))
      return (await extractText(pdf)).text.map(squeeze)
    }
    const pages = await print()
    expect(pages.length).toBe(1)
    for (const words of [...printed, ...strategies, `jawbench ${scenario.job} `, 'Checked by'])
      expect(pages[0]).toContain(squeeze(words))
    expect(pages[0]).not.toMatch(/grip|jaws/i)
    await page.getByLabel('Further pages with every parameter').check()
    for (const scheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme: scheme })
      await audit(page, `${id}, ${scheme}`, rulesFor(scheme))
    }
    const further = (await print()).slice(1).join('')
    for (const words of ['Every parameter', 'How each figure is computed', jobOf(scenario).figures[0]!.label])
      expect(further).toContain(squeeze(words))
    await page.setViewportSize({ width: 390, height: 844 })
    await audit(page, `${id}, narrow`)
    expect(await sideways(page)).toBeLessThanOrEqual(0)
  })

  test(`the customer view of ${id} opens from its bench and tells it slide by slide`, async ({ page }) => {
    await page.goto(link)
    for (const label of strategies)
      await expect(page.getByRole('article', { name: label })).toHaveAttribute('aria-busy', 'false')
    const verdicts = await Promise.all(
      strategies.map((label) => page.getByRole('article', { name: label }).locator('.word').textContent()),
    )
    await page.getByRole('button', { name: 'Present', exact: true }).focus()
    await page.keyboard.press('Enter')
    await expect(slide(page, 'The job')).toContainText(fact)
    await expect(slide(page, 'The job').getByRole('img', { name: /, before the run\.$/ })).toBeVisible()

    await page.keyboard.press('ArrowRight')
    await expect(page.getByRole('button', { name: 'Pause' }), 'it plays by itself').toBeVisible()
    await page.keyboard.press(' ')
    const time = page.getByRole('slider', { name: 'Time' })
    const end = String(scenario.run.duration)
    const seen = new Set<string | null>()
    await time.focus()
    await page.keyboard.press('Home')
    await time.blur()
    while ((await time.getAttribute('aria-valuenow')) !== end) {
      seen.add(await page.locator('.board-word').first().textContent())
      await page.keyboard.press('ArrowDown')
    }
    expect([...seen]).toContain(shownAs(scenario).stage(null, 0))
    expect([...seen]).toContain(word)
    await expect(page.locator('.board-word')).toHaveText(verdicts as string[])

    for (const [index, title] of slides.entries()) {
      await page.keyboard.press('Home')
      for (let press = 0; press < index; press++) await page.keyboard.press('PageDown')
      await expect(slide(page, title)).toBeVisible()
      await audit(page, `${id}, ${title}`)
      await page.setViewportSize({ width: 390, height: 844 })
      // The slide draws itself anew once it knows its width.
      await expect.poll(() => sideways(page), title).toBeLessThanOrEqual(0)
      await page.setViewportSize({ width: 1280, height: 720 })
    }
    await page.keyboard.press('Escape')
    await expect(page.getByRole('banner')).toBeVisible()
  })
}
