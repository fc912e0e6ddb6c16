import { AxeBuilder } from '@axe-core/playwright'
import { test as base, expect, type Locator, type Page } from '@playwright/test'

export { expect }

interface Fixtures {
  driven: undefined
  noise: RegExp | null
  quiet: undefined
  firstVisit: boolean
  visited: undefined
  offlineCopy: boolean
  uncopied: undefined
}

export const test = base.extend<Fixtures>({
  /** Whether the browser has never been here: then the bench plays once by itself. */
  firstVisit: [false, { option: true }],
  visited: [
    async ({ context, firstVisit }, use) => {
      // Pages that are no place for storage, such as a blank one, have nothing to play either.
      const played = () => location.protocol === 'http:' && localStorage.setItem('jawbench.played', '1')
      if (!firstVisit) await context.addInitScript(played)
      await use(undefined)
    },
    { auto: true },
  ],
  /** Whether the page may make its copy for offline use, for which the browser reads every file of the build anew in each test. */
  offlineCopy: [false, { option: true }],
  uncopied: [
    async ({ context, offlineCopy }, use) => {
      const refuse = () => {
        if (!('ServiceWorkerContainer' in globalThis)) return
        ServiceWorkerContainer.prototype.register = () => Promise.reject(new DOMException('denied', 'SecurityError'))
      }
      if (!offlineCopy) await context.addInitScript(refuse)
      await use(undefined)
    },
    { auto: true },
  ],
  /** A project without a browser that can be driven: its tests count as not run. */
  driven: [
    // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the names of what a fixture needs from this place
    async ({}, use, { project, skip }) => {
      skip(Boolean(project.metadata.lacking), project.metadata.lacking)
      await use(undefined)
    },
    { auto: true },
  ],
  /** What a test makes go wrong, as the console tells it. */
  noise: [null, { option: true }],
  /**
   * Every page of every test: nothing may go wrong in its console, and nothing may be asked of another machine (which the
   * browser could not reach either, see the configuration).
   */
  quiet: [
    async ({ context, baseURL, noise }, use) => {
      const faults: string[] = []
      context.on('console', (message) => {
        const told = message.type() === 'error' || message.type() === 'warning'
        if (told && !noise?.test(message.text())) faults.push(message.text())
      })
      context.on('weberror', (error) => faults.push(String(error.error())))
      context.on('request', (request) => {
        const { protocol, origin, href } = new URL(request.url())
        const own = origin === new URL(baseURL ?? '').origin || protocol === 'data:' || protocol === 'blob:'
        if (!own) faults.push(`asked ${href}`)
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

/** Asks axe for faults of the page, or of what `scope` makes of it; `what` names the state in the message. */
export async function audit(page: Page, what: string, scope = (axe: AxeBuilder) => axe) {
  // Legacy mode spares a blank page at each call, which only frames of other origins would need.
  const isThere = await page.evaluate(() => 'axe' in window)
  const axe = new AxeBuilder({ page, ...(isThere && { axeSource: 'void 0' }) }) // half a megabyte is read once a page
    .setLegacyMode()
    .options({ resultTypes: ['violations'] })
  const { violations } = await scope(axe).analyze()
  const found = violations.map(({ id, nodes }) => `${what}, ${id}: ${nodes.map((node) => node.html).join(' ')}`)
  expect(found).toEqual([])
}

/** What axe is asked of one page in both colour schemes: everything in the light one; in the dark one what looks at colours. */
export const rulesFor = (scheme: 'light' | 'dark') => (axe: AxeBuilder) =>
  scheme === 'light' ? axe : axe.withRules(['color-contrast', 'link-in-text-block'])

/** How far the page can be scrolled sideways [px]. */
export const sideways = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth - innerWidth)

/** Lets the page draw some pictures: what moves by itself has moved by then, however slow the machine. */
export const pictures = (page: Page, count = 20) =>
  page.evaluate(async (times) => {
    for (let n = 0; n < times; n++) await new Promise(requestAnimationFrame)
  }, count)
