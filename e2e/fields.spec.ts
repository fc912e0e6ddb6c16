import type { Page } from '@playwright/test'
import { audit, expect, field, openBench, outcome, rulesFor, settled, test } from './support.ts'

const type = async (page: Page, section: string, name: string, text: string) => {
  await field(page, section, name === 'Opening' ? 'Jaw mass' : name)
  const input = page.getByRole('spinbutton', { name: new RegExp(`^${name}`) }).first()
  await input.fill(text)
  await input.press('Enter')
  return input
}

test('a figure may carry another unit, and one that does not fit is told which do', async ({ page }) => {
  await openBench(page)
  for (const [text, shown] of [
    ['11 cm', '110'],
    ['4.5 in', '114.3'],
    ['0.1 m', '100'],
    ['95', '95'],
  ] as const)
    await expect(await type(page, 'Part', 'Width', text)).toHaveValue(shown)
  await expect(await type(page, 'Part', 'Crack force', '0.2 kN')).toHaveValue('200')

  const width = await type(page, 'Part', 'Width', '11 kg')
  await expect(width).toHaveValue('11 kg')
  await expect(width).toHaveAttribute('aria-invalid', 'true')
  await expect(width).toHaveAccessibleErrorMessage(/“kg” is no unit of this quantity: write µm, mm, cm, m or in\./)
  await width.blur()
  await expect(width, 'what was typed outlives the focus').toHaveValue('11 kg')
  await width.press('Escape')
  await expect(width).toHaveValue('95')
  await expect(width).not.toHaveAttribute('aria-invalid')

  await page.getByRole('group', { name: 'Units' }).getByRole('radio', { name: 'US' }).check({ force: true })
  await expect(await type(page, 'Part', 'Width', '11 cm')).toHaveValue('4.33071')
})

test('two limits that hang together change at once, by keyboard, and one undo takes both back', async ({ page }) => {
  await openBench(page)
  const before = await outcome(page)
  const width = await type(page, 'Part', 'Width', '200 mm')
  await expect(width).toHaveValue('200 mm')
  await expect(width).toHaveAccessibleErrorMessage(
    /Opening: given 140\smm\. Allowed: more than the part's width of 200\smm\. .*taken together/,
  )
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    await audit(page, `waiting, ${colorScheme}`, rulesFor(colorScheme))
  }
  const opening = await type(page, 'Jaws', 'Opening', '22 cm')
  await expect(opening).toHaveValue('220')
  await expect(width).toHaveValue('200')
  await expect(width).not.toHaveAttribute('aria-invalid')
  await settled(page)
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(width).toHaveValue('118')
  await expect(opening).toHaveValue('140')
  expect(await outcome(page)).toEqual(before)
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled()

  await width.fill('300')
  await width.press('Enter')
  await expect(width).toHaveAttribute('aria-invalid', 'true')
  await page.getByRole('button', { name: 'Redo' }).click()
  await expect(width, 'another scenario ends the waiting').toHaveValue('200')
})
