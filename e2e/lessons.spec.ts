import type { Page } from '@playwright/test'
import { audit, expect, openBench, outcome, rulesFor, sideways, test } from './support.ts'

const openLessons = async (page: Page) => {
  await page.getByRole('navigation', { name: 'Views' }).getByRole('button', { name: 'Lessons' }).click()
  await expect(page.getByRole('button', { name: 'Run it' })).toBeVisible()
}

const listed = (page: Page, title: string) =>
  page.getByRole('navigation', { name: 'Lessons' }).getByRole('button', { name: title })

const question = (page: Page) => page.getByRole('form', { name: 'Question' })

const judged = (page: Page) => page.getByRole('region', { name: 'Answer' })

/** Presses Tab until the element has the focus. */
async function tabTo(page: Page, name: string | RegExp, role: 'button' | 'spinbutton' | 'radio') {
  const wanted = page.getByRole(role, { name }).first()
  for (let presses = 0; presses < 60; presses++) {
    if (await wanted.evaluate((element) => element === document.activeElement)) return
    await page.keyboard.press('Tab')
  }
  throw new Error(`Tab does not reach ${name}`)
}

test('a whole lesson by keyboard, twice answered, and the next one; progress survives a reload and can be reset', async ({
  page,
}) => {
  await openBench(page)
  const before = await outcome(page)
  await openLessons(page)
  await tabTo(page, 'Least grip force', 'spinbutton')
  await page.keyboard.type('30')
  await page.keyboard.press('Enter')
  await expect(judged(page).getByRole('heading')).toHaveText('Not yet too high')
  await expect(judged(page).getByRole('heading')).toBeFocused()
  await expect(judged(page)).toContainText('A hint')
  expect(await judged(page).textContent(), 'the first miss gives nothing away').not.toMatch(/\d/)
  await expect(page.getByRole('region', { name: 'Verdicts' })).toHaveCount(0)
  await expect(page.getByRole('heading', { name: 'What it shows' })).toHaveCount(0)
  await page.keyboard.press('Shift+Tab')
  await page.keyboard.press('Enter')
  await expect(judged(page).getByRole('heading')).toHaveText(/Not yet .*\d.*% too high/)
  const said = (await judged(page).textContent())!
  expect(said).not.toMatch(/[{}]/)
  const needed = Number(/needs ([\d.]+)/.exec(said)![1])
  await expect(page.getByRole('region', { name: 'Verdicts' }).getByRole('article')).toHaveCount(3)
  await expect(page.getByRole('figure').getByText('drops below').or(page.locator('.chart-plot'))).toBeVisible()
  await expect(listed(page, 'The force window')).toContainText('tried')

  await page.keyboard.press('Shift+Tab')
  await tabTo(page, 'Run it', 'button')
  await page.keyboard.press('Shift+Tab')
  await page.keyboard.type(String(needed))
  await page.keyboard.press('Enter')
  await expect(judged(page).getByRole('heading')).toHaveText(/^Right/)
  await expect(listed(page, 'The force window')).toContainText('done')

  await tabTo(page, 'Next lesson', 'button')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { level: 2 })).toHaveText('Impact and approach speed')
  await expect(page.getByRole('heading', { level: 2 })).toBeFocused()

  await page.reload()
  await openLessons(page)
  await expect(page.getByRole('heading', { level: 2 })).toHaveText('Impact and approach speed')
  await expect(listed(page, 'The force window')).toContainText('done')
  await expect(page.getByText('1 of 18 done')).toBeVisible()

  await page.getByRole('button', { name: 'Reset progress' }).click()
  await page.getByRole('button', { name: 'Keep' }).click()
  await expect(listed(page, 'The force window')).toContainText('done')
  await page.getByRole('button', { name: 'Reset progress' }).click()
  await page.getByRole('button', { name: 'Forget' }).click()
  await expect(listed(page, 'The force window')).not.toContainText('done')

  await page.getByRole('navigation', { name: 'Views' }).getByRole('button', { name: 'Bench' }).click()
  expect(await outcome(page), 'lessons leave the bench alone').toEqual(before)
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled()
})

test('a choice has to be made, and a run opens on the bench; one undo brings back what was there', async ({ page }) => {
  await openBench(page)
  const before = await outcome(page)
  await openLessons(page)
  await listed(page, 'Power loss').click()
  await expect(page.getByRole('heading', { level: 2 })).toHaveText('Power loss')
  await expect(page.getByRole('article', { name: 'Power loss' })).toContainText('no safety function')
  await page.getByRole('button', { name: 'Run it' }).click()
  await expect(page.getByText('Choose an answer first')).toBeVisible()
  await page.getByRole('radio', { name: 'All three' }).check()
  await page.getByRole('button', { name: 'Run it' }).click()
  await expect(judged(page)).toContainText(/Not yet.*A hint/)
  await expect(page.getByText('what the runs show')).toHaveCount(0)
  await page.getByRole('radio', { name: 'None of the three' }).check()
  await page.getByRole('button', { name: 'Run it' }).click()
  await expect(page.getByText('what the runs show')).toBeVisible()
  const card = page.getByRole('region', { name: 'Verdicts' }).getByRole('article').first()
  const word = await card.locator('.lesson-word').textContent()
  await card.getByRole('button', { name: /Open on the bench/ }).click()

  await expect(page.locator('.scenario-name')).toHaveText('Lesson: Power loss')
  await outcome(page)
  await expect(page.getByRole('article', { name: 'Current clamp' }).locator('.word')).toHaveText(word!)
  await page.getByRole('button', { name: 'Undo' }).click()
  expect(await outcome(page)).toEqual(before)
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled()
})

test('a setting that misses its goal says by how much, and the nearest one that meets it does', async ({ page }) => {
  await page.goto('./')
  await openLessons(page)
  await listed(page, 'Dead band and hunting').click()
  await expect(page.getByRole('heading', { level: 2 })).toHaveText('Dead band and hunting')
  await page.getByRole('button', { name: 'Run it' }).click()
  await expect(judged(page).getByRole('row').nth(1)).toContainText(/no, by/)
  await expect(judged(page)).toContainText('A hint')
  await expect(judged(page)).not.toContainText('does both is')
  await expect(page.getByRole('region', { name: 'Verdicts' }).getByRole('article')).toHaveCount(2)
  await page.getByRole('button', { name: 'Run it' }).click()
  await expect(judged(page)).toContainText('does both is')
  const nearest = /does both is ([\d.]+)/.exec((await judged(page).textContent())!)![1]!
  const field = page.getByRole('spinbutton', { name: 'Dead band' })
  const before = await judged(page).textContent()
  for (const refused of ['1000', 'much']) {
    await field.fill(refused)
    await field.press('Enter')
    await expect(field).toHaveAttribute('aria-invalid', 'true')
    expect(await judged(page).textContent()).toBe(before)
  }
  await field.fill(nearest)
  await field.press('Enter')
  await expect(judged(page).getByRole('heading')).toHaveText('Right')
})

test('kept progress that is broken is forgotten', async ({ page }) => {
  await page.goto('./')
  for (const broken of ['{', '7', 'null', '{"done":7,"tried":[1,"force-window"]}']) {
    await page.evaluate((text) => localStorage.setItem('jawbench.lessons', text), broken)
    await page.reload()
    await openLessons(page)
    await expect(page.getByText('0 of 18 done')).toBeVisible()
  }
  await expect(listed(page, 'The force window')).toContainText('tried')
})

test('accessible before and after the answer, light and dark', async ({ page }) => {
  const auditBoth = async (what: string) => {
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' })
      await audit(page, `${what}, ${colorScheme}`, rulesFor(colorScheme))
    }
  }
  await page.goto('./')
  await openLessons(page)
  for (const title of ['Impact and approach speed', 'Power loss']) {
    await listed(page, title).click()
    await expect(page.getByRole('heading', { level: 2 })).toHaveText(title)
    await expect(page.getByRole('button', { name: 'Run it' })).toBeVisible()
    await auditBoth(`${title}, asked`)
    if (title === 'Power loss') await question(page).getByRole('radio').first().check()
    await page.getByRole('button', { name: 'Run it' }).click()
    await expect(judged(page)).toContainText('A hint')
    await auditBoth(`${title}, hint`)
    await page.getByRole('button', { name: 'Run it' }).click()
    await expect(judged(page)).not.toContainText('A hint')
    await auditBoth(`${title}, answered`)
  }
})

test('at 390 px every lesson fits', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await page.goto('./')
  await openLessons(page)
  const titles = await page.locator('.lesson-list span').allTextContents()
  expect(titles.length).toBeGreaterThanOrEqual(10)
  for (const title of titles) {
    await page.locator('.lesson-nav summary').click()
    await listed(page, title).click()
    await expect(page.getByRole('heading', { level: 2 })).toHaveText(title)
    await expect(page.getByRole('button', { name: 'Run it' })).toBeVisible()
    const radio = question(page).getByRole('radio').first()
    if (await radio.isVisible()) await radio.check()
    for (const miss of [1, 2]) {
      await page.getByRole('button', { name: 'Run it' }).click()
      await expect(
        judged(page)
          .or(page.getByRole('heading', { name: 'What it shows' }))
          .first(),
      ).toBeVisible()
      if (miss === 2) await expect(judged(page)).not.toContainText('A hint')
      expect(await sideways(page), `${title}, answer ${miss}`).toBeLessThanOrEqual(0)
    }
  }
})
