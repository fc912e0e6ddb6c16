import '../sim/others.ts'
import { readFileSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { scenarioToLink } from '../app/store/link.ts'
import { ALL_PRESETS, axisResponse, editScenario, jobOf, PRESETS, runHere, tracesCsv } from '../sim/index.ts'
import { channelsOf } from '../sim/run/channels.ts'
import { simulate } from '../sim/run/simulate.ts'
import { audit, expect, rulesFor, sideways, test } from './support.ts'

const FIXTURE = readFileSync(new URL('../test/log/read/ball-screw-axis.csv', import.meta.url))

const named = (name: string, text: string | Buffer) => ({ name, mimeType: 'text/csv', buffer: Buffer.from(text) })

/** A heavier axis than that of the bench: 0.9 kg of carriage in the place of 0.15 kg. */
function heavier() {
  const edited = editScenario(PRESETS[0]!.scenario, [{ path: 'actuator.transmission.carriageMass', value: 0.9 }])
  if (!edited.ok) throw new Error('refused')
  return edited.scenario
}

const heavierAxis = () => tracesCsv(runHere(heavier(), 'current-clamp', { traces: true }).traces)

/** Its frequency response, as a table. */
function heavierResponse(): string {
  const at = axisResponse(heavier(), 'speed', 0.0002)
  const rows = Array.from({ length: 80 }, (_, k) => {
    const hertz = 10 * 150 ** (k / 79)
    const { re, im } = at(2 * Math.PI * hertz)
    return `${hertz},${20 * Math.log10(Math.hypot(re, im))},${(180 * Math.atan2(im, re)) / Math.PI}`
  })
  return `Frequency [Hz],Magnitude [dB],Phase [deg]\n${rows.join('\n')}\n`
}

/** Lets files fall onto the view, as a person does with the mouse. */
async function drop(page: Page, ...files: { name: string; text: string }[]) {
  const carried = await page.evaluateHandle((given) => {
    const transfer = new DataTransfer()
    for (const { name, text } of given) transfer.items.add(new File([text], name, { type: 'text/csv' }))
    return transfer
  }, files)
  const view = page.locator('.log')
  await view.dispatchEvent('dragover', { dataTransfer: carried })
  await expect(page.getByText('Drop the logs to read them')).toBeVisible()
  await view.dispatchEvent('drop', { dataTransfer: carried })
  await expect(page.getByText('Drop the logs to read them')).toBeHidden()
}

test('a log is read, a column corrected, the model fitted, the values used and undone', async ({ page }) => {
  await page.goto('./#view=log')
  await expect(page.getByText('A log stays on this machine')).toBeVisible()
  await page.getByLabel('Logs', { exact: true }).setInputFiles(named('heavier.csv', heavierAxis()))

  const columns = page.getByRole('list', { name: 'Columns of heavier.csv' })
  const current = columns.getByRole('group', { name: 'current', exact: true })
  await expect(current.getByRole('combobox')).toHaveValue('current')
  await expect(current).toContainText('a trace of the simulator')
  await expect(columns.getByRole('group', { name: 'time' }).getByRole('combobox')).toHaveValue('time')
  const laid = page.getByRole('region', { name: 'Measured over simulated' })
  await expect(laid.getByText('Left (rms)').first()).toBeVisible()

  // A sign that is turned is told, and undone.
  await current.getByRole('button', { name: 'Turn the sign of current' }).click()
  await expect(current).toContainText('as you say')
  await expect(current.getByLabel('Scale')).toHaveValue('−1')
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(current).toContainText('a trace of the simulator')
  await expect(current.getByLabel('Scale')).toHaveValue('1')

  // Two columns cannot be one channel; what was laid over the model stays.
  const speed = columns.getByRole('group', { name: 'jaw speed', exact: true })
  await current.getByRole('combobox').selectOption('speed')
  await expect(speed.getByRole('combobox')).toHaveValue('nothing')
  await speed.getByRole('combobox').selectOption('speed')
  await expect(page.getByRole('alert')).toContainText('“#9”, “#15” cannot all be speed: say which one is.')
  await expect(laid.getByText('Left (rms)').first()).toBeVisible()
  await expect(page.getByRole('button', { name: 'Fit the model to the logs' })).toBeDisabled()
  await page.getByRole('button', { name: 'Undo' }).click()
  await page.getByRole('button', { name: 'Undo' }).click()

  const fit = page.getByRole('region', { name: 'Fit', exact: true })
  await fit.getByText('As picked').click()
  for (const name of ['Viscous friction', 'Current offset', 'Width', 'Stiffness'])
    await fit.getByLabel(name, { exact: true }).uncheck()
  await fit.getByRole('button', { name: 'Fit the model to the logs' }).click()
  const row = fit.getByRole('row', { name: 'Carriage mass' })
  await expect(row).toContainText('150')
  const [, found] = (await row.getByRole('cell').allTextContents()).map((text) => Number.parseFloat(text))
  expect(Math.abs(found! / 900 - 1)).toBeLessThan(0.1)
  await expect(laid.getByText(/^Left \(rms\): .* before, .* fitted/).first()).toBeVisible()

  const changes = page.getByRole('region', { name: 'What it changes' })
  const margins = changes.getByRole('region', { name: 'Margins, as assumed and as fitted' })
  await expect(margins.getByRole('row', { name: 'Position loop' })).not.toContainText('…')
  await expect(changes.getByRole('row', { name: 'Current clamp' })).not.toContainText('…')
  await audit(page, 'log')
  await page.emulateMedia({ colorScheme: 'dark' })
  await audit(page, 'log, dark', rulesFor('dark'))
  await page.setViewportSize({ width: 390, height: 844 })
  expect(await sideways(page)).toBeLessThanOrEqual(0)
  await audit(page, 'log, narrow', rulesFor('dark'))
  await page.setViewportSize({ width: 1280, height: 720 })

  await page.getByRole('button', { name: 'Use on the bench' }).click()
  await expect(page.getByText('The fitted values are on the bench; undo brings back those before.')).toBeVisible()
  await expect(page.getByRole('button', { name: 'The fitted values are on the bench' })).toBeDisabled()
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(page.getByRole('button', { name: 'Use on the bench' })).toBeEnabled()

  // A page that is opened anew has no log.
  await page.reload()
  await expect(page.getByText('Record moves both ways at two speeds or more')).toBeVisible()
})

test('logs that cannot be used are refused in a sentence, and the others stay', async ({ page }) => {
  await page.goto('./#view=log')
  const logs = page.getByLabel('Logs', { exact: true })
  await logs.setInputFiles(named('ball-screw-axis.csv', FIXTURE))
  const columns = page.getByRole('list', { name: 'Columns of ball-screw-axis.csv' })
  await expect(columns.getByRole('group', { name: 'position' }).getByRole('combobox')).toHaveValue('travel')
  await expect(columns.getByRole('group', { name: 'command' })).toContainText('named command, unit V')

  const still = ['time [s],position [mm],current [A]', ...Array.from({ length: 60 }, (_, k) => `${k / 100},3,0.2`)]
  const timeless = ['position [mm],current [A]', ...Array.from({ length: 60 }, (_, k) => `${k * (k % 9)},${k % 5}`)]
  await logs.setInputFiles([
    named('picture.csv', Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex')),
    named('still.csv', still.join('\n')),
    named('timeless.csv', timeless.join('\n')),
  ])
  await expect(page.getByRole('region', { name: 'picture.csv' }).getByRole('alert')).toContainText('It is no text but')
  await expect(page.getByRole('region', { name: 'still.csv' })).toContainText('Nothing moves in this log.')

  const asked = page.getByRole('region', { name: 'timeless.csv' })
  await expect(asked.getByRole('alert')).toContainText('Give the rows per second')
  await asked.getByLabel('Rows per second').fill('1000')
  await asked.getByLabel('Rows per second').press('Enter')
  await expect(asked.getByRole('alert')).toBeHidden()
  await expect(asked).toContainText(/rows at 1\D?000\sHz, as you say/)

  for (const name of ['picture.csv', 'still.csv', 'timeless.csv'])
    await page.getByRole('button', { name: `Close ${name}` }).click()
  await expect(columns).toBeVisible()

  // A command that pushes against the motion is that of no axis: a sentence, no numbers.
  await columns.getByRole('button', { name: 'Turn the sign of command' }).click()
  const fit = page.getByRole('region', { name: 'Fit', exact: true })
  await fit.getByText('As picked').click()
  for (const name of ['Viscous friction', 'Current offset']) await fit.getByLabel(name, { exact: true }).uncheck()
  await fit.getByRole('button', { name: 'Fit the model to the logs' }).click()
  await expect(fit.getByRole('alert')).toContainText('There is no fit: the fit does not describe this axis')
  await expect(fit.getByRole('table')).toBeHidden()
})

test('logs are dropped, their way is dragged along the stroke or moved by keys, and each move is one step back', async ({
  page,
}) => {
  await page.goto('./#view=log')
  await drop(page, { name: 'first.csv', text: heavierAxis() })
  const laid = page.getByRole('region', { name: 'Measured over simulated' })
  await expect(laid.getByText('Left (rms)').first()).toBeVisible()

  const hand = page.getByRole('slider', { name: 'Way of the logs along the stroke' })
  await hand.scrollIntoViewIfNeeded()
  const origin = async () => Number(await hand.getAttribute('aria-valuenow'))
  expect(await origin()).toBe(0)
  const box = (await hand.boundingBox())!
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x + 20, y, { steps: 4 })
  await page.mouse.move(x + 40, y, { steps: 4 })
  await page.mouse.up()
  const dragged = await origin()
  expect(dragged).toBeGreaterThan(0)

  await hand.focus()
  await page.keyboard.press('ArrowRight')
  const once = await origin()
  expect(once).toBeGreaterThan(dragged)
  await page.keyboard.press('Shift+ArrowLeft')
  expect(await origin()).toBeLessThan(dragged)
  const undo = page.getByRole('button', { name: 'Undo' })
  await undo.click()
  expect(await origin()).toBe(once)
  await undo.click()
  expect(await origin()).toBe(dragged)
  // The whole drag is one step.
  await undo.click()
  expect(await origin()).toBe(0)

  // A second log joins the first; a scenario that is dropped is none.
  await drop(page, { name: 'second.csv', text: heavierAxis() })
  await expect(page.getByRole('list', { name: 'Columns of second.csv' })).toBeVisible()
  await expect(laid.getByRole('combobox', { name: 'Recording' })).toBeVisible()
  await laid.getByRole('combobox', { name: 'Recording' }).selectOption({ label: 'second.csv' })
  await expect(laid.getByText('Left (rms)').first()).toBeVisible()
  await page.getByRole('button', { name: 'Close first.csv' }).click()
  await expect(laid.getByRole('combobox', { name: 'Recording' })).toBeHidden()
})

test('a measured frequency response is laid over that of the axis, fitted, and stands in loops and report', async ({
  page,
}) => {
  await page.goto('./#view=log')
  await drop(page, { name: 'empty.csv', text: 'Frequency [Hz],Magnitude [dB],Phase [deg]\n' })
  await expect(page.getByRole('region', { name: 'empty.csv' }).getByRole('alert')).toContainText('no rows of numbers')
  await page.getByRole('button', { name: 'Close empty.csv' }).click()
  const few = heavierResponse().split('\n').slice(0, 5).join('\n')
  await drop(page, { name: 'few.csv', text: few })
  const response = page.getByRole('region', { name: 'Frequency response' })
  await expect(response.getByRole('alert')).toContainText('only 4 of its frequencies can be used')
  await page.getByRole('button', { name: 'Close few.csv' }).click()

  await drop(page, { name: 'swept.csv', text: heavierResponse() })
  await expect(page.getByRole('region', { name: 'swept.csv' })).toContainText('A frequency response: 80 frequencies')
  const mass = response.getByRole('row', { name: 'Carriage mass' })
  await expect(mass).toContainText('900 g')
  await expect(response).toContainText('Motor side and output swing against each other')
  // In rad/s it is that of no such axis; undone it is again.
  await response.getByText('rad/s', { exact: true }).click()
  await expect(mass.getByRole('cell').nth(1)).not.toHaveText('900 g')
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(mass).toContainText('900 g')
  const gains = response.getByRole('region', { name: 'Designed gains, as assumed and as fitted' })
  await expect(gains.getByRole('row', { name: 'Position loop: Derivative gain' })).not.toContainText('…')
  await expect(response.getByRole('row', { name: 'Sensed force' })).not.toContainText('…')
  await audit(page, 'response')
  await page.setViewportSize({ width: 390, height: 844 })
  expect(await sideways(page)).toBeLessThanOrEqual(0)
  await page.emulateMedia({ colorScheme: 'dark' })
  await audit(page, 'response, narrow, dark', rulesFor('dark'))
  await page.setViewportSize({ width: 1280, height: 720 })

  await response.getByRole('button', { name: 'Use on the bench' }).click()
  await page.getByRole('button', { name: 'Loops and gains' }).click()
  await expect(page.getByText('The thin line is this loop in free air')).toBeVisible()
  await page.goBack()
  await response.getByRole('button', { name: 'Assumed axis beside it on the bench' }).click()
  await expect(page.getByRole('region', { name: 'Two axes side by side' })).toContainText('as assumed')

  await page
    .getByRole('link', { name: 'Report' })
    .or(page.getByRole('button', { name: 'Report', exact: true }))
    .first()
    .click()
  const sheet = page.locator('article.report')
  await expect(page.getByRole('status').getByText('The report is complete.')).toBeVisible()
  await expect(sheet).toContainText('Fitted to a frequency response of 80 frequencies')
  // What was fitted is known after the page was opened anew.
  await page.reload()
  await expect(sheet).toContainText('Fitted to a frequency response of 80 frequencies')
})

/** A log of each other job, and the file before the fit: what is wrong in it, what that is called, and what the log says instead. */
const OTHERS = [
  {
    id: 'cast-arm',
    wrong: { 'ram.gap': 0.0212 },
    name: 'Way to the bore',
    lies: 'into the bore',
    found: /^20(\.[0-2]\d*)?\s/,
    channel: 'Force, measured and simulated',
  },
  {
    id: 'jar-lid',
    wrong: { 'liner.stiffness': 3e5 },
    name: 'Axial stiffness',
    lies: 'onto the thread',
    found: /^(39[4-9]|40[0-6])/,
    channel: 'Torque, measured and simulated',
  },
  {
    id: 'tray-film',
    wrong: { 'web.slack': 0.014 },
    name: 'Slack',
    lies: 'under the web',
    found: /^(9\.[7-9]|10)/,
    channel: 'Tension, measured and simulated',
  },
]

for (const { id, wrong, name, lies, found, channel } of OTHERS)
  test(`a log of ${id} is laid over the model, fitted and used`, async ({ page }) => {
    const { scenario } = ALL_PRESETS.find((preset) => preset.id === id)!
    const edited = (edits: Record<string, unknown>) => {
      const made = editScenario(
        scenario,
        Object.entries(edits).map(([path, value]) => ({ path, value })),
      )
      if (!made.ok) throw new Error('refused')
      return made.scenario
    }
    const quiet = { 'drive.currentNoise': 0, 'run.cycle': null }
    const { traces } = simulate(edited(quiet), 'current-clamp')
    const csv = tracesCsv(traces, channelsOf(jobOf(scenario)))
    await page.goto(`./#s=${scenarioToLink(edited({ ...quiet, ...wrong }))}`)
    await page.getByRole('navigation', { name: 'Views' }).getByRole('button', { name: 'Log', exact: true }).click()
    await page.getByLabel('Logs', { exact: true }).setInputFiles(named(`${id}.csv`, csv))
    const alignment = page.getByRole('region', { name: 'How it lies over the model' })
    await expect(alignment).toContainText(lies, { timeout: 60_000 })
    const laid = page.getByRole('region', { name: 'Measured over simulated' })
    await expect(laid.getByText(new RegExp(`^${channel}`))).toBeAttached({ timeout: 60_000 })
    const fit = page.getByRole('region', { name: 'Fit', exact: true })
    await fit.getByRole('button', { name: 'Fit the model to the logs' }).click()
    const row = fit.getByRole('row', { name: new RegExp(name) }).first()
    await expect(row).toBeVisible({ timeout: 120_000 })
    expect((await row.getByRole('cell').allTextContents())[1]).toMatch(found)
    const changes = page.getByRole('region', { name: 'What it changes' })
    await expect(changes.getByRole('row', { name: 'Current clamp' })).not.toContainText('…', { timeout: 120_000 })
    await audit(page, `log of ${id}`)
    await page.setViewportSize({ width: 390, height: 844 })
    expect(await sideways(page)).toBeLessThanOrEqual(0)
    await page.setViewportSize({ width: 1280, height: 720 })
    await page.getByRole('button', { name: 'Use on the bench' }).click()
    await expect(page.getByText('The fitted values are on the bench; undo brings back those before.')).toBeVisible()
  })
