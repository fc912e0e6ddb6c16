/**
 * A study of 1,000 parts by three strategies, in a real browser on the built page: from the press to the first shares of all
 * strategies, to its end, and whether the page was free meanwhile: the long tasks (50 ms and more) that the browser itself reports, and
 * what its busiest tasks took of the processor, which does not depend on who else is at work on the machine.
 */
import { cpus, loadavg } from 'node:os'
import { chromium, type Page } from 'playwright-core'
import { preview } from 'vite'
import { freePort } from '../../.tools/port.mjs'
import { goal, row } from './report.ts'

const FIRST = 1
const WHOLE = 12
/** A task that is longer keeps the page from answering [ms]. */
const LONG = 50

interface Studied {
  /** [s] from the press. */
  first: number
  whole: number
  /** [ms] */
  long: number[]
}

export async function study(): Promise<void> {
  const server = await preview({ root: process.cwd(), preview: { port: await freePort() }, logLevel: 'silent' })
  const browser = await chromium.launch({ executablePath: process.env.CHROMIUM_PATH ?? chromium.executablePath() })
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
    await page.goto(`${server.resolvedUrls!.local[0]!}#view=spread`)
    await page.getByRole('button', { name: 'Take all' }).click()
    await page.getByRole('button', { name: 'Grip them' }).waitFor()
    await page.waitForLoadState('networkidle')
    row('machine', `${cpus()[0]!.model.trim()}, ${cpus().length} processors, load ${loadavg()[0]!.toFixed(1)}`)
    row('browser', `Chromium ${browser.version()}, headless`)
    await browser.startTracing(page, { categories: ['toplevel', 'disabled-by-default-devtools.timeline'] })
    const { first, whole, long } = await studied(page)
    const trace = await browser.stopTracing()
    const busy = tasksOf(trace, /^CrRendererMain$/)
    const hands = sum(tasksOf(trace, /^DedicatedWorker/)) / 1e3
    row('long tasks by the clock', `${long.length}, the longest ${Math.max(0, ...long).toFixed(0)} ms`)
    row(
      'busiest tasks, processor [ms]',
      busy
        .slice(0, 5)
        .map((each) => each.toFixed(0))
        .join(', '),
    )
    row('processor: workers, page', `${hands.toFixed(1)} s, ${(sum(busy) / 1e3).toFixed(1)} s`)
    goal('press to first shares', `${first.toFixed(2)} s`, `<= ${FIRST} s`, first <= FIRST)
    goal('press to the end, 1,000 parts x 3', `${whole.toFixed(1)} s`, `<= ${WHOLE} s`, whole <= WHOLE)
    const most = busy[0] ?? 0
    goal('longest task of the page, processor', `${most.toFixed(0)} ms`, `<= ${LONG} ms`, most <= LONG)
  } finally {
    await browser.close()
    await server.close()
  }
}

interface TraceEvent {
  name: string
  pid: number
  tid: number
  /** Processor time [µs]. */
  tdur?: number
  args: { name?: string }
}

/**
 * What each task of the threads of such a name took of the processor [ms], the busiest first: what they take by the clock depends on who
 * else is at work.
 */
function tasksOf(trace: Buffer, name: RegExp): number[] {
  const { traceEvents: events } = JSON.parse(trace.toString()) as { traceEvents: TraceEvent[] }
  const named = events.filter((event) => event.name === 'thread_name' && name.test(event.args.name ?? ''))
  const threads = new Set(named.map(({ pid, tid }) => `${pid} ${tid}`))
  const tasks = events.filter(
    (event) => event.name === 'ThreadControllerImpl::RunTask' && threads.has(`${event.pid} ${event.tid}`),
  )
  return tasks.map(({ tdur = 0 }) => tdur / 1e3).sort((a, b) => b - a)
}

const sum = (times: number[]) => times.reduce((total, each) => total + each, 0)

const studied = async (page: Page): Promise<Studied> =>
  page.evaluate(async (): Promise<Studied> => {
    const until = (there: () => boolean) =>
      new Promise<number>((resolve) => {
        const observer = new MutationObserver(() => {
          if (!there()) return
          observer.disconnect()
          resolve(performance.now())
        })
        observer.observe(document, { subtree: true, childList: true, attributes: true, characterData: true })
      })
    const button = (text: string) => [...document.querySelectorAll('button')].find((each) => each.textContent === text)
    const long: number[] = []
    const observer = new PerformanceObserver((list) => long.push(...list.getEntries().map(({ duration }) => duration)))
    observer.observe({ type: 'longtask' })
    const begin = performance.now()
    const first = until(() => document.querySelectorAll('.strategy-shares').length === 3)
    const whole = until(() => button('1,000 more') !== undefined)
    button('Grip them')!.click()
    const times = { first: ((await first) - begin) / 1e3, whole: ((await whole) - begin) / 1e3 }
    // What the browser has measured is told a little later.
    await new Promise((told) => requestIdleCallback(told))
    long.push(...observer.takeRecords().map(({ duration }) => duration))
    return { ...times, long }
  })
