import { test as base, expect as baseExpect, type Locator, type Page } from '@playwright/test'

/** A busy machine may take its time. */
export const expect = baseExpect.configure({ timeout: 20_000 })

/** Every page of every test: nothing may go wrong in its console, and nothing may be asked of another machine. */
export const test = base.extend<{ quiet: undefined }>({
  quiet: [
    async ({ context, baseURL }, use) => {
      const faults: string[] = []
      context.on('console', (message) => {
        if (message.type() === 'error' || message.type() === 'warning') faults.push(message.text())
      })
      context.on('weberror', (error) => faults.push(String(error.error())))
      await context.route('**', (route) => {
        const url = new URL(route.request().url())
        if (url.origin === new URL(baseURL ?? '').origin || url.protocol === 'data:' || url.protocol === 'blob:')
          return route.continue()
        faults.push(`asked ${url.href}`)
        return route.abort()
      })
      await use(undefined)
      expect(faults).toEqual([])
    },
    { auto: true },
  ],
})

export const STRATEGIES = ['Threshold stop', 'Current clamp', 'Sensed force']

export const card = (page: Page, strategy: string) => page.getByRole('article', { name: strategy })

export const verdict = (page: Page, strategy: string) => card(page, strategy).locator('.word')

/** Opens the bench and waits until every strategy has its verdict. */
export async function openBench(page: Page, address = './') {
  await page.goto(address)
  await settled(page)
}

/** Waits until every card shows the run of the present scenario. */
export async function settled(page: Page) {
  for (const strategy of STRATEGIES) await expect(card(page, strategy)).toHaveAttribute('aria-busy', 'false')
}

/** All verdicts, reasons and figures as text, without the differences from the run before. */
export async function outcome(page: Page): Promise<string[]> {
  await settled(page)
  const parts = page.getByRole('article').locator('.word, .reason, .figures > div:not(:has-text("Step error")) .figure')
  return parts.allTextContents()
}

/** Opens the folded groups of parameters until the field is there. */
export async function field(page: Page, section: string, name: string): Promise<Locator> {
  const parameters = page.getByRole('region', { name: 'Parameters', exact: true })
  const found = parameters.getByRole('spinbutton', { name, exact: false }).first()
  const fold = parameters
    .locator('details')
    .filter({ has: page.locator('summary', { hasText: section }) })
    .first()
  if (!(await found.isVisible())) await fold.locator('summary').first().click()
  await expect(found).toBeVisible()
  return found
}
