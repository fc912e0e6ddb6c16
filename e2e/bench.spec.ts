import type { Locator, Page } from '@playwright/test'
import { extractText, getDocumentProxy } from 'unpdf'
import {
  audit,
  card,
  expect,
  field,
  openBench,
  outcome,
  STRATEGIES,
  settled,
  sideways,
  test,
  verdict,
} from './support.ts'

test('a drag flips a verdict, one undo takes it back, and a link carries it to another page', async ({
  page,
  context,
  browser,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write'])
  await openBench(page)
  const before = await outcome(page)
  const first = await verdict(page, 'Threshold stop').textContent()
  for (const strategy of STRATEGIES) await expect(card(page, strategy).locator('.reason')).toContainText(/\d/)
  expect(new Set(await page.getByRole('article').locator('.word').allTextContents()).size).toBeGreaterThan(1)

  const speed = await field(page, 'Approach', 'Approach speed')
  await speed.scrollIntoViewIfNeeded()
  const scale = speed.locator('xpath=..').locator('.scale')
  const box = (await scale.boundingBox())!
  const thumb = (await scale.locator('.scale-thumb').boundingBox())!
  const y = box.y + box.height / 2
  await page.mouse.move(thumb.x + thumb.width / 2, y)
  await page.mouse.down()
  const figures = card(page, 'Current clamp').locator('.figures').first()
  for (let moves = 1; moves < 3 || (await verdict(page, 'Threshold stop').textContent()) === first; moves++) {
    const shown = await figures.textContent()
    await page.mouse.move(thumb.x - (moves * box.width) / 20, y)
    await expect(figures, 'figures follow while the button is held').not.toHaveText(shown!)
    await settled(page)
  }
  await page.mouse.up()
  await expect(card(page, 'Current clamp').locator('.change').first()).toContainText(/[+−]/)

  const dragged = await outcome(page)
  await page.getByRole('button', { name: 'Share' }).click()
  const link = await page.evaluate(() => navigator.clipboard.readText())
  const elsewhere = await browser.newContext()
  const second = await elsewhere.newPage()
  await openBench(second, link)
  expect(await outcome(second)).toEqual(dragged)
  await expect(second.getByRole('button', { name: 'Undo' })).toBeDisabled()
  await elsewhere.close()

  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(verdict(page, 'Threshold stop')).toHaveText(first ?? '')
  expect(await outcome(page)).toEqual(before)
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled()

  await page.getByRole('button', { name: 'Redo' }).click()
  await expect(verdict(page, 'Threshold stop')).not.toHaveText(first ?? '')
  await expect(page, 'the address is kept up').toHaveURL(link)
  await page.goto('about:blank')
  await openBench(page)
  expect(await outcome(page), 'the browser brings back what was there').toEqual(dragged)
})

test('broken links and files are refused in words, and the bench stays as it was', async ({ page }) => {
  await openBench(page, './#s=1.abc.AAAA')
  const before = await outcome(page)
  const notice = page.locator('.notice')
  await expect(notice).toContainText('incomplete or was changed')
  await notice.getByRole('button', { name: 'Put away' }).click()
  await expect(notice).toHaveCount(0)
  for (const [hash, words] of [
    ['#s=', 'no scenario'],
    ['#s=9.a.b', 'version 9'],
  ] as const) {
    await page.evaluate((text) => {
      location.hash = text
    }, hash)
    await expect(notice).toContainText(words)
    await expect(notice).toContainText('The bench is as it was.')
  }

  const open = async (name: string, text: string | Buffer) => {
    const buffer = typeof text === 'string' ? Buffer.from(text) : text
    await page.locator('input[type=file]').setInputFiles({ name, mimeType: 'application/json', buffer })
  }
  const refused = page.getByRole('dialog', { name: 'This file was not opened' })
  await open('two-faults.json', '{"part": {"mass": -1}, "drive": {"busVoltage": "much"}, "colour": "blue"}')
  await expect(refused.getByRole('listitem')).toHaveCount(3)
  await expect(refused).toContainText('part.mass: given -1, allowed')
  await expect(refused).toContainText('colour: given an unknown key')
  await page.keyboard.press('Escape')
  await open('nan.json', '{"part": {"mass": NaN}}')
  await expect(refused).toContainText('no JSON')
  await page.keyboard.press('Escape')
  await open('big.json', Buffer.alloc(3_000_000, ' '))
  await expect(refused).toContainText('3000000 bytes')
  await page.keyboard.press('Escape')
  await open('move.csv', 'time [s],position [m]\n0,0\n0.1,0.01\n')
  await refused.getByRole('button', { name: 'Go to Log' }).click()
  await expect(page.getByRole('heading', { name: 'What does the real axis say?' })).toBeVisible()
  await page.goBack()
  await expect(refused).toBeHidden()
  expect(await outcome(page)).toEqual(before)
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled()

  const mass = await field(page, 'Part', 'Mass')
  const kept = await mass.inputValue()
  for (const typed of ['NaN', '-5', '1e308', 'heavy']) {
    await mass.fill(typed)
    await mass.press('Enter')
    await expect(mass).toHaveAttribute('aria-invalid', 'true')
    await expect(mass, 'what was typed stays beside its reason').toHaveValue(typed)
    await expect(mass).toHaveAccessibleErrorMessage(/Allowed: /)
  }
  await mass.press('Escape')
  await expect(mass).toHaveValue(kept)
  expect(await outcome(page)).toEqual(before)
})

test('a file that was saved opens again, and traces and picture go out as files', async ({ page }) => {
  await openBench(page)
  const mass = await field(page, 'Part', 'Mass')
  await mass.fill('777')
  await mass.press('Enter')
  const changed = await outcome(page)
  const caught = async (act: () => Promise<void>) => {
    const download = page.waitForEvent('download')
    await act()
    const file = await download
    const chunks: Buffer[] = []
    for await (const chunk of await file.createReadStream()) chunks.push(chunk as Buffer)
    return { name: file.suggestedFilename(), bytes: Buffer.concat(chunks) }
  }
  const saved = await caught(() => page.getByRole('button', { name: 'Save' }).click())
  expect(JSON.parse(saved.bytes.toString())).toMatchObject({ format: 'jawbench-scenario', part: { mass: 0.777 } })

  const exported = (item: string) => async () => {
    await page.getByRole('button', { name: 'Export' }).click()
    await page.getByRole('menuitem', { name: item }).click()
  }
  const csv = await caught(exported('Traces of Current clamp'))
  expect(csv.bytes.toString()).toMatch(/^"?time \[s\]"?,"?force \[N\]"?,.*\r\n[-\d.e]+,/)
  const png = await caught(exported('Picture and traces'))
  expect(png.name).toMatch(/\.png$/)
  expect(png.bytes.subarray(1, 4).toString()).toBe('PNG')
  expect(png.bytes.length).toBeGreaterThan(50_000)

  await page.getByRole('button', { name: 'Presets' }).click()
  await page.getByRole('menuitem').nth(1).click()
  await settled(page)
  expect(await outcome(page)).not.toEqual(changed)
  await page.evaluate((text) => {
    const carried = new DataTransfer()
    carried.items.add(new File([text], 'grip.json', { type: 'application/json' }))
    for (const type of ['dragover', 'drop'])
      document.body.firstElementChild?.firstElementChild?.dispatchEvent(
        new DragEvent(type, { dataTransfer: carried, bubbles: true, cancelable: true }),
      )
  }, saved.bytes.toString())
  await expect(mass).toHaveValue('777')
  expect(await outcome(page)).toEqual(changed)
})

test('everything works by keyboard', async ({ page }) => {
  await openBench(page)
  const before = await outcome(page)
  await page.keyboard.press('Tab')
  await expect(page.getByRole('button', { name: 'Skip to the bench' })).toBeFocused()
  await tabTo(page, page.getByRole('button', { name: 'Presets' }))
  await page.keyboard.press('Enter')
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('Enter')
  await settled(page)
  const preset = await outcome(page)
  expect(preset).not.toEqual(before)
  await page.keyboard.press('Control+z')
  expect(await outcome(page)).toEqual(before)
  await page.keyboard.press('Control+Shift+z')
  expect(await outcome(page)).toEqual(preset)
  await page.keyboard.press('Control+z')

  const reached = await tabThrough(page)
  for (const part of [
    'Open',
    'Save',
    'Share',
    'Export',
    'Units',
    'Theme',
    'Wanted grip force',
    'Pin',
    'time cursor',
    'All cautions',
  ])
    expect(
      reached.some((name) => name.includes(part)),
      `${part} among ${reached.join(' | ')}`,
    ).toBe(true)

  await page.locator('summary').filter({ hasText: 'Part' }).first().focus()
  await page.keyboard.press('Enter')
  const mass = page.getByRole('spinbutton', { name: 'Mass' }).first()
  await mass.focus()
  await page.keyboard.press('PageUp')
  expect(await outcome(page)).not.toEqual(before)
  await page.keyboard.press('Control+z')
  expect(await outcome(page)).toEqual(before)

  await card(page, 'Current clamp').getByRole('button', { name: 'Pin' }).focus()
  await page.keyboard.press('Enter')
  await mass.focus()
  await page.keyboard.press('PageUp')
  await settled(page)
  await card(page, 'Current clamp').getByRole('button', { name: 'Pin' }).focus()
  await page.keyboard.press('Enter')
  const table = page.getByRole('region', { name: 'Table of pinned runs' })
  await expect(table.getByRole('row', { name: /^Part, Mass/ })).toBeVisible()
  await expect(table.getByRole('row', { name: /^Hold margin/ }).locator('.change')).toContainText('−')

  const cursor = page.getByRole('slider', { name: 'Grip force: time cursor' })
  await cursor.focus()
  await page.keyboard.press('Home')
  await expect(cursor).toHaveAttribute('aria-valuenow', '0')
  await page.keyboard.press('ArrowRight')
  await expect(cursor).not.toHaveAttribute('aria-valuenow', '0')
  await page.getByRole('button', { name: 'All cautions' }).focus()
  await page.keyboard.press('Enter')
  await expect(page.getByRole('dialog', { name: 'Cautions' })).toContainText('risk assessment')
  await page.keyboard.press('Escape')
  await expect(page.getByRole('button', { name: 'All cautions' })).toBeFocused()
})

async function tabTo(page: Page, target: Locator) {
  for (let press = 0; press < 40; press++) {
    await page.keyboard.press('Tab')
    if (await target.evaluate((element) => element === document.activeElement)) return
  }
  throw new Error('Tab does not reach it')
}

/** Names of everything that Tab reaches, once around the page. */
async function tabThrough(page: Page): Promise<string[]> {
  const names: string[] = []
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur())
  for (let press = 0; press < 200; press++) {
    await page.keyboard.press('Tab')
    const name = await page.evaluate(() => {
      const at = document.activeElement as HTMLInputElement | null
      if (!at || at === document.body) return null
      const group = at.closest('fieldset')?.querySelector('legend')?.textContent ?? ''
      return [at.ariaLabel, at.labels?.[0]?.textContent, at.textContent?.slice(0, 40), group].filter(Boolean).join(', ')
    })
    if (name === null) break
    names.push(name)
  }
  return names
}

test('the page is accessible and fits: light, dark, narrow', async ({ page }) => {
  await openBench(page)
  for (const theme of ['Light', 'Dark']) {
    await page.getByRole('group', { name: 'Theme' }).getByRole('radio', { name: theme }).check({ force: true })
    await audit(page, theme)
  }
  await card(page, 'Current clamp').getByRole('button', { name: 'Pin' }).click()
  await page.getByRole('button', { name: 'All cautions' }).click()
  await audit(page, 'cautions')
  await page.keyboard.press('Escape')

  await page.setViewportSize({ width: 390, height: 844 })
  expect(await sideways(page)).toBeLessThanOrEqual(0)
  const top = async (selector: string) => (await page.locator(selector).first().boundingBox())?.y ?? Number.NaN
  expect(await top('.verdict')).toBeLessThan(await top('.stage'))
  expect(await top('.stage')).toBeLessThan(await top('.traces'))
  await expect.poll(async () => (await page.locator('.lanes').boundingBox())?.width).toBeLessThan(390)
  await audit(page, 'narrow')
  await page.getByRole('button', { name: 'Parameters' }).click()
  await expect(page.getByRole('dialog', { name: 'Parameters' }).getByRole('spinbutton').first()).toBeVisible()
  await audit(page, 'drawer')
  await page.keyboard.press('Escape')
  await page.setViewportSize({ width: 1100, height: 800 })
  expect(await sideways(page)).toBeLessThanOrEqual(0)
})

test('a simulator that dies is restarted and said so, and an empty window is said before anything else', async ({
  page,
}) => {
  await openBench(page)
  const before = await outcome(page)
  // A check at a finer step that dies is nobody's loss: no word is said of it.
  for (const strategy of STRATEGIES)
    await expect(card(page, strategy).locator('.figures > div', { hasText: 'Step error' })).toContainText(/\d.*%/)
  expect(page.workers().length).toBeGreaterThanOrEqual(2)
  for (const worker of page.workers()) await worker.evaluate(() => self.close())
  const mass = await field(page, 'Part', 'Mass')
  await mass.fill('600')
  await mass.press('Enter')
  await expect(page.locator('.notice')).toContainText('restarted')
  await expect.poll(() => outcome(page)).not.toEqual(before)

  await mass.fill('9000')
  await mass.press('Enter')
  await expect(page.getByRole('alert')).toHaveText(
    /^No grip force both holds and spares this part: holding needs at least .* N, the part takes at most .* N\.$/,
  )
})

test('prints one page: window, verdicts, picture and traces, light, without what is operated', async ({ page }) => {
  await page.emulateMedia({ colorScheme: 'dark' })
  await openBench(page)
  await expect(page.locator('.traces canvas')).toHaveCount(4)
  const pdf = await getDocumentProxy(new Uint8Array(await page.pdf({ preferCSSPageSize: true })))
  const { text } = await extractText(pdf)
  const words = text.map((each) => each.replaceAll(/\s+/g, ' '))
  expect(words.length).toBe(1)
  for (const shown of ['Teapot on a ball screw', 'simulated, not measured', 'Force window', 'Crushed', 'Jaw travel'])
    expect(words[0]).toContain(shown)
  for (const operated of ['Play', 'Pin', 'Present', 'Presets', 'Traces shown', 'Approach speed'])
    expect(words[0]).not.toContain(operated)
})
