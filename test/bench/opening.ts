/**
 * What opening the page costs, in a real browser on the built page: the scripts of the first view, compressed, and the time from
 * the start of the navigation to the first content and to the first verdict on the page. Each opening is a context of its own,
 * with nothing kept from the one before; what the offline copy fetches afterwards is not counted.
 */
import { cpus, loadavg } from 'node:os'
import { brotliCompressSync, gzipSync } from 'node:zlib'
import { type Browser, chromium, type Page } from 'playwright-core'
import { preview } from 'vite'
import { freePort } from '../../.tools/port.mjs'
import { goal, row, summary } from './report.ts'
import { median } from './stats.ts'

const MOST_SCRIPT = 200
const CONTENT = 800
const VERDICT = 1200
const OPENINGS = 9

interface Opening {
  /** [ms] from the start of the navigation. */
  content: number
  verdict: number
}

declare global {
  interface Window {
    /** Resolves with the time of the frame that shows the first verdict [ms]. */
    firstVerdict?: Promise<number>
  }
}

export async function opening(): Promise<void> {
  const server = await preview({ root: process.cwd(), preview: { port: await freePort() }, logLevel: 'silent' })
  const browser = await chromium.launch({ executablePath: process.env.CHROMIUM_PATH ?? chromium.executablePath() })
  try {
    const address = server.resolvedUrls!.local[0]!
    const { page, brotli, workers } = await scripts(browser, address)
    const openings: Opening[] = []
    for (let n = 0; n < OPENINGS; n++) openings.push(await open(browser, address))
    const content = openings.map((each) => each.content)
    const verdict = openings.map((each) => each.verdict)
    row('machine', `${cpus()[0]!.model.trim()}, ${cpus().length} processors, load ${loadavg()[0]!.toFixed(1)}`)
    row('browser', `Chromium ${browser.version()}, headless`)
    goal('scripts of the first view, gzip', `${page.toFixed(1)} kB`, `<= ${MOST_SCRIPT} kB`, page <= MOST_SCRIPT)
    row('the same, brotli', `${brotli.toFixed(1)} kB`)
    row('scripts of its workers, gzip', `${workers.toFixed(1)} kB`)
    row('first content [ms]', summary(content, 0))
    row('first verdict [ms]', summary(verdict, 0))
    goal('first content, median', `${median(content).toFixed(0)} ms`, `< ${CONTENT} ms`, median(content) < CONTENT)
    goal('first verdict, median', `${median(verdict).toFixed(0)} ms`, `< ${VERDICT} ms`, median(verdict) < VERDICT)
  } finally {
    await browser.close()
    await server.close()
  }
}

/** Everything that runs until all verdicts are there and the page is at rest, in kB. */
async function scripts(browser: Browser, address: string): Promise<Record<'page' | 'brotli' | 'workers', number>> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, serviceWorkers: 'block' })
  const bodies = new Map<string, Promise<Buffer>>()
  context.on('response', (response) => {
    if (/\.js$/.test(new URL(response.url()).pathname)) bodies.set(response.url(), response.body())
  })
  const page = await context.newPage()
  await page.goto(address)
  await page.waitForFunction(() => document.querySelectorAll('article[aria-busy="false"]').length === 3)
  await page.waitForLoadState('networkidle')
  const sum = { page: 0, brotli: 0, workers: 0 }
  for (const [url, body] of bodies) {
    const isWorker = /\.worker-/.test(url)
    sum[isWorker ? 'workers' : 'page'] += gzipSync(await body).length / 1000
    if (!isWorker) sum.brotli += brotliCompressSync(await body).length / 1000
  }
  await context.close()
  return sum
}

async function open(browser: Browser, address: string): Promise<Opening> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } })
  const page: Page = await context.newPage()
  await page.addInitScript(watch)
  await page.goto(address, { waitUntil: 'commit' })
  await page.waitForFunction(() => window.firstVerdict)
  const verdict = (await page.evaluate(() => window.firstVerdict))!
  const content = await page.evaluate(() => performance.getEntriesByName('first-contentful-paint')[0]!.startTime)
  await context.close()
  return { content, verdict }
}

/** Runs in the page before anything of it. */
function watch(): void {
  window.firstVerdict = new Promise((resolve) => {
    const seen = () => document.querySelector('article.verdict[aria-busy="false"]') !== null
    const observer = new MutationObserver(() => {
      if (!seen()) return
      observer.disconnect()
      // The frame is on its way when the one after it begins.
      requestAnimationFrame(() => requestAnimationFrame(() => resolve(performance.now())))
    })
    observer.observe(document, { subtree: true, childList: true, attributes: true })
  })
}
