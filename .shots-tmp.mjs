import { chromium } from 'playwright-core'
const CASES = {
  open: null,
  overloaded: { actuator: { kind: 'screw', motor: { continuousCurrent: 1.4 } }, strategies: { currentClamp: { limit: 4 } }, part: { crackForce: 2000 } },
  dropped: { jaws: { friction: { static: 0.05, sliding: 0.04 } }, part: { crackForce: 2000 } },
  missed: { arm: { lift: 0.05 } },
  unstable: { servo: { kp: 1e8 } },
  coarse: { run: { step: 5e-5, duration: 1 }, part: { stiffness: 3e7, crackForce: 5000 }, jaws: { padStiffness: 1e8, mass: 0.02 } },
}
const b = await chromium.launch({ executablePath: '/usr/bin/chromium' })
const wanted = process.argv.slice(2)
for (const [w, scheme] of [[1440, 'light'], [390, 'dark']]) {
  const page = await (await b.newContext({ viewport: { width: w, height: 1000 }, colorScheme: scheme })).newPage()
  for (const [name, part] of Object.entries(CASES)) {
    if (wanted.length && !wanted.includes(name)) continue
    await page.goto('http://127.0.0.1:4197/')
    if (part) await page.locator('input[type=file]').first().setInputFiles({ name: 'x.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify({ format: 'jawbench-scenario', version: 2, name, ...part })) })
    await page.waitForFunction(() => document.querySelectorAll('article[aria-busy="false"]').length === 3, null, { timeout: 120000 })
    try { await page.waitForFunction(() => [...document.querySelectorAll('.verdict dl')].length > 0 && !document.body.textContent.includes('Worked out by a second run'), null, { timeout: 40000 }) } catch {}
    await page.screenshot({ path: `/tmp/shots-ratings/${name}-${w}-${scheme}.png` })
    console.log(name, w, JSON.stringify(await page.locator('.word').allTextContents()), JSON.stringify(await page.locator('.reason').allTextContents()))
  }
}
await b.close()
