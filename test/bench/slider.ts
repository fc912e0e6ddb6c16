/**
 * From slider event to redrawn picture and charts, in a real browser on the built page: the approach speed of the opening preset
 * (1.5 s) is dragged with two strategies shown. Each step's clock starts with the time stamp of its pointer event and stops at
 * the start of the frame after the one in which figures, picture and charts of exactly this speed were drawn.
 */
import { cpus, loadavg } from 'node:os'
import { chromium, type Page } from 'playwright-core'
import { preview } from 'vite'
import { freePort } from '../../.tools/port.mjs'
import { goal, row } from './report.ts'
import { median, percentile } from './stats.ts'

const GOAL = 50
const WARM_UP = 30
const STEPS = 200
/** A step that takes longer than this [ms] ends the benchmark. */
const PATIENCE = 5000

declare global {
  interface Window {
    /** Resolves with the milliseconds of the next pointer move, or null where it did not change the value. */
    nextMove?: Promise<number | null>
    awaitMove(): void
  }
}

export async function slider(): Promise<void> {
  const server = await preview({ root: process.cwd(), preview: { port: await freePort() }, logLevel: 'silent' })
  const browser = await chromium.launch({ executablePath: process.env.CHROMIUM_PATH ?? chromium.executablePath() })
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
    await page.goto(server.resolvedUrls!.local[0]!)
    await page.getByRole('checkbox', { name: 'Sensed force' }).uncheck()
    await page.waitForFunction(() => document.querySelectorAll('article[aria-busy="false"]').length === 2)
    const idle = median(await page.evaluate(frames, 60))
    const { times, still } = await drag(page)
    row('machine', `${cpus()[0]!.model.trim()}, ${cpus().length} processors, load ${loadavg()[0]!.toFixed(1)}`)
    row('browser', `Chromium ${browser.version()}, headless`)
    row('frame interval of the idle page, median', `${idle.toFixed(1)} ms`)
    row('steps measured / without a new value', `${times.length} / ${still}`)
    row('slider to picture, median', `${median(times).toFixed(1)} ms`)
    const late = percentile(times, 95)
    goal('slider to picture, 95th percentile', `${late.toFixed(1)} ms`, `< ${GOAL} ms`, late < GOAL)
  } finally {
    await browser.close()
    await server.close()
  }
}

/** Drags the scale of the approach speed to and fro, a pixel at a time, each step when the one before has been drawn. */
async function drag(page: Page): Promise<{ times: number[]; still: number }> {
  const input = page.getByRole('spinbutton', { name: 'Approach speed' })
  await page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) fold.open = true
  })
  const scale = page.locator('.field', { has: input }).locator('.scale')
  await scale.scrollIntoViewIfNeeded()
  const thumb = (await scale.locator('.scale-thumb').boundingBox())!
  const box = (await scale.boundingBox())!
  const y = box.y + box.height / 2
  const from = thumb.x + thumb.width / 2
  const reach = Math.floor(Math.min(from - box.x, box.x + box.width - from) * 0.6)

  await input.evaluate(watch, PATIENCE)
  await page.mouse.move(from, y)
  await page.mouse.down()
  const times: number[] = []
  let still = 0
  for (let n = 1; times.length < STEPS + WARM_UP && n < 10 * STEPS; n++) {
    const x = from + reach - Math.abs(((n + reach) % (4 * reach)) - 2 * reach)
    await page.evaluate(() => window.awaitMove())
    await page.mouse.move(x, y)
    const time = await page.evaluate(() => window.nextMove)
    if (typeof time === 'number') times.push(time)
    else still++
  }
  await page.mouse.up()
  return { times: times.slice(WARM_UP), still }
}

/** Runs in the page: intervals of so many frames [ms]. */
async function frames(count: number): Promise<number[]> {
  const frame = () => new Promise<number>((resolve) => requestAnimationFrame(resolve))
  const intervals: number[] = []
  let last = await frame()
  for (let n = 0; n < count; n++) {
    const now = await frame()
    intervals.push(now - last)
    last = now
  }
  return intervals
}

/** Runs in the page. */
function watch(input: Element, patience: number): void {
  const shown = () => input.getAttribute('aria-valuenow')
  const busy = () => document.querySelector('article[aria-busy="true"]') !== null
  window.awaitMove = () => {
    window.nextMove = new Promise((resolve, reject) => {
      const before = shown()
      const begin = ({ timeStamp }: PointerEvent) => {
        let frames = 0
        const look = () => {
          frames += 1
          const changed = shown() !== before
          if (changed && !busy()) requestAnimationFrame(() => resolve(performance.now() - timeStamp))
          else if (!changed && frames > 3) resolve(null)
          else if (performance.now() - timeStamp > patience) reject(new Error('a step of the drag was never drawn'))
          else requestAnimationFrame(look)
        }
        requestAnimationFrame(look)
      }
      window.addEventListener('pointermove', begin, { once: true, capture: true })
    })
    window.nextMove.catch(() => {})
  }
}
