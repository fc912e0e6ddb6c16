import { readFileSync } from 'node:fs'
import { editScenario, PRESETS, runHere, tracesCsv } from '../sim/index.ts'
import { audit, expect, rulesFor, sideways, test } from './support.ts'

const FIXTURE = readFileSync(new URL('../test/log/read/ball-screw-axis.csv', import.meta.url))

const named = (name: string, text: string | Buffer) => ({ name, mimeType: 'text/csv', buffer: Buffer.from(text) })

/** The trace of a heavier axis than that of the bench: 0.9 kg of carriage in the place of 0.15 kg. */
function heavierAxis(): string {
  const edited = editScenario(PRESETS[0]!.scenario, [{ path: 'actuator.transmission.carriageMass', value: 0.9 }])
  if (!edited.ok) throw new Error('refused')
  return tracesCsv(runHere(edited.scenario, 'current-clamp', { traces: true }).traces)
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
  await expect(changes.getByRole('row', { name: 'Position loop' })).toContainText('°')
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
