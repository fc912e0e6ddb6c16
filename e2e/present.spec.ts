import type { BrowserContext, Download, Page } from '@playwright/test'
import { PRESETS } from '../sim/index.ts'
import {
  audit,
  card,
  expect,
  openBench,
  pictures,
  rulesFor,
  STRATEGIES,
  settled,
  sideways,
  test,
  verdict,
} from './support.ts'

const slide = (page: Page, title: string) => page.getByRole('region', { name: title, exact: true })
const place = (page: Page) => page.locator('.present-place')
const time = (page: Page) => page.getByRole('slider', { name: 'Time' })

async function openPresent(page: Page) {
  await page.getByRole('button', { name: 'Present', exact: true }).focus()
  await page.keyboard.press('Enter')
  await expect(slide(page, 'The job')).toBeVisible()
}

/** Everything the bench said, as the customer view has to say it. */
async function openWithVerdicts(page: Page) {
  await openBench(page)
  const words = await Promise.all(STRATEGIES.map((strategy) => verdict(page, strategy).textContent()))
  await openPresent(page)
  return words
}

/** A short grip by one strategy, held at its start. */
async function openCup(page: Page) {
  await openBench(page)
  const { scenario } = PRESETS[0]!
  const short = { arm: { ...scenario.arm, moves: [] }, run: { ...scenario.run, duration: 0.5 } }
  await page.locator('input[type=file]').setInputFiles({
    name: 'cup.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify({ ...scenario, ...short, name: 'Cup, 2nd trial' })),
  })
  await settled(page)
  for (const strategy of STRATEGIES.slice(1)) {
    await page.getByRole('checkbox', { name: strategy }).click()
    await expect(card(page, strategy)).toHaveCount(0)
  }
  await openPresent(page)
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press(' ')
}

async function openClip(page: Page) {
  await page.getByRole('button', { name: 'Clip' }).click()
  return page.getByRole('dialog', { name: 'Clip of this grip' })
}

async function bytesOf(file: Download): Promise<Buffer> {
  const chunks: Buffer[] = []
  for await (const chunk of await file.createReadStream()) chunks.push(chunk as Buffer)
  return Buffer.concat(chunks)
}

test('is opened, walked, reloaded and left by keyboard', async ({ page }) => {
  const words = await openWithVerdicts(page)
  await expect(page.getByRole('banner')).toHaveCount(0)
  await expect(slide(page, 'The job')).toContainText('118 mm wide')
  await expect(slide(page, 'The job')).toContainText('Force window')
  await expect(page.getByRole('status').filter({ hasText: 'Slide 1 of' })).toBeAttached()

  await page.keyboard.press('ArrowRight')
  await expect(slide(page, 'The grip')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Pause' }), 'it plays by itself').toBeVisible()
  await page.keyboard.press(' ')
  await expect(page.getByRole('button', { name: 'Play', exact: true })).toBeVisible()
  const paused = await time(page).getAttribute('aria-valuenow')
  await pictures(page)
  expect(await time(page).getAttribute('aria-valuenow'), 'space holds it').toBe(paused)
  while ((await time(page).getAttribute('aria-valuenow')) !== '1.5') await page.keyboard.press('ArrowDown')
  await expect(page.locator('.board-word')).toHaveText(words as string[])
  await expect(page.getByRole('status').filter({ hasText: 'Threshold stop crushed' })).toBeAttached()
  await page.keyboard.press('ArrowUp')
  await expect(time(page)).not.toHaveAttribute('aria-valuenow', '1.5')
  await time(page).focus()
  await page.keyboard.press('Home')
  await expect(time(page), 'the time bar keeps its own keys').toHaveAttribute('aria-valuenow', '0')
  await expect(page.locator('.board-word')).toHaveText(STRATEGIES.map(() => 'Closing'))

  await page.keyboard.press('PageDown')
  await time(page).blur()
  await page.keyboard.press('ArrowRight')
  await expect(slide(page, 'What came of it')).toBeVisible()
  await expect(page.locator('.outcome-word')).toHaveText(words as string[])
  await expect(slide(page, 'What came of it')).toContainText(/Cracks at 0\.\d+\ss: 65\sN on a 65\sN part\./)
  await page.keyboard.press('Home')
  await expect(place(page)).toContainText('1 of')
  await page.keyboard.press('End')
  const last = await place(page).textContent()
  await expect(page.getByRole('button', { name: 'Next' })).toBeDisabled()
  await expect(slide(page, 'Why').getByRole('status')).toContainText(/^Crushed\..*\d/)
  await expect(slide(page, 'Why').getByRole('table')).toContainText('Peak force')
  await slide(page, 'Why').getByRole('radio', { name: 'Current clamp' }).check({ force: true })
  await expect(slide(page, 'Why').getByRole('status')).toContainText(/^Held\..*\d/)

  await page.reload()
  await expect(place(page), 'a reload stays on its slide').toHaveText(last ?? '')
  await page.keyboard.press('Escape')
  await settled(page)
  await expect(page.getByRole('banner')).toBeVisible()
  expect(await page.evaluate(() => document.fullscreenElement)).toBeNull()
})

test('nothing moves by itself where motion is not wanted, and the same keys walk through the grip', async ({
  page,
}) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await openWithVerdicts(page)
  await page.keyboard.press('ArrowRight')
  await expect(time(page)).toHaveAttribute('aria-valuenow', '0')
  await expect(page.getByRole('button', { name: 'Play', exact: true }), 'it can be had').toBeVisible()
  await pictures(page)
  await expect(time(page)).toHaveAttribute('aria-valuenow', '0')
  const seen = new Set<string | null>()
  for (let press = 0; press < 40 && (await slide(page, 'The grip').isVisible()); press++) {
    seen.add(await time(page).getAttribute('aria-valuenow'))
    await page.keyboard.press(press % 2 ? ' ' : 'ArrowRight')
  }
  expect(seen.size).toBeGreaterThan(5)
  expect(seen).toContain('1.5')
  await expect(slide(page, 'What came of it')).toBeVisible()
})

test('a still is a picture, and a clip can be cancelled', async ({ page }) => {
  await openCup(page)
  const stillFile = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Still' }).click()
  const picture = await stillFile
  expect(picture.suggestedFilename()).toBe('cup-2nd-trial-still.png')
  const drawn = await page.evaluate(looks, {
    kind: 'image' as const,
    data: (await bytesOf(picture)).toString('base64'),
    type: 'image/png',
  })
  expect(drawn).toMatchObject({ width: 2560, height: 1440 })
  expect(drawn.shades[0]!.length, 'more than ground and ink').toBeGreaterThan(20)

  const dialog = await openClip(page)
  await dialog.getByRole('button', { name: 'Make the clip' }).click()
  await expect.poll(() => dialog.getByRole('progressbar').getAttribute('value')).not.toBe('0')
  await dialog.getByRole('button', { name: 'Cancel' }).click()
  await expect(dialog.getByRole('button', { name: 'Make the clip' })).toBeVisible()
  await expect(page.locator('.photo-place')).toHaveCount(0)
})

for (const lacking of ['nothing', 'avc'])
  test(`a clip plays in a browser whose encoder lacks ${lacking}`, async ({ page, context }) => {
    await page.addInitScript((codec) => {
      const ask = VideoEncoder.isConfigSupported.bind(VideoEncoder)
      VideoEncoder.isConfigSupported = (config) =>
        config.codec.startsWith(codec) ? Promise.resolve({ supported: false, config }) : ask(config)
    }, lacking)
    await openCup(page)
    const dialog = await openClip(page)
    const clipFile = page.waitForEvent('download')
    await dialog.getByRole('button', { name: 'Make the clip' }).click()
    const clip = await clipFile
    expect(clip.suggestedFilename()).toMatch(lacking === 'avc' ? /^cup-2nd-trial-clip\.webm$/ : /-clip\.(mp4|webm)$/)
    await expect(dialog).toContainText('Saved:')
    const said = Number(/video of ([\d.]+) s/.exec((await dialog.textContent()) ?? '')?.[1])
    const played = await playBack(context, clip)
    expect(played).toMatchObject({ width: 1280, height: 720 })
    expect(Math.abs(played.duration - said)).toBeLessThan(0.06)
    for (const shades of played.shades) expect(shades.length, 'no frame is blank').toBeGreaterThan(20)
    const [first, middle, end] = played.pixels
    expect(difference(first!, middle!), 'the jaws have closed').toBeGreaterThan(0.1)
    expect(difference(middle!, end!), 'and time has gone on').toBeGreaterThan(0.02)
  })

test('a browser without an encoder says so and offers the still', async ({ page }) => {
  await page.addInitScript(() => Reflect.deleteProperty(globalThis, 'VideoEncoder'))
  await openWithVerdicts(page)
  await page.getByRole('button', { name: 'Clip' }).click()
  const dialog = page.getByRole('dialog', { name: 'Clip of this grip' })
  await expect(dialog).toContainText('no video encoder')
  const file = page.waitForEvent('download')
  await dialog.getByRole('button', { name: 'Save a still' }).click()
  expect((await file).suggestedFilename()).toMatch(/-still\.png$/)
  await page.keyboard.press('Escape')
  await expect(dialog).toBeHidden()
  await expect(slide(page, 'The job'), 'Escape in a dialog leaves the view open').toBeVisible()
})

test('is accessible and fits: light, dark, narrow', async ({ page }) => {
  const sound = async (what: string, scheme: 'light' | 'dark') => {
    await audit(page, what, rulesFor(scheme))
    expect(await sideways(page), `${what}: nothing beside the window`).toBeLessThanOrEqual(0)
  }
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await openWithVerdicts(page)
  for (const [width, height] of [
    [1280, 720],
    [390, 844],
  ] as const) {
    await page.setViewportSize({ width, height })
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' })
      await page.keyboard.press('Home')
      for (let n = 1; ; n++) {
        await expect(place(page)).toContainText(`${n} of`)
        if (await slide(page, 'Why').isVisible()) await expect(page.getByRole('table')).toBeVisible()
        await sound(`slide ${n}, ${colorScheme}, ${width} px`, colorScheme)
        const next = page.getByRole('button', { name: 'Next' })
        if (await next.isDisabled()) break
        await next.click()
      }
    }
  }
  await page.getByRole('button', { name: 'Clip' }).click()
  await expect(page.getByRole('button', { name: 'Make the clip' })).toBeVisible()
  await sound('clip dialog', 'light')
})

interface Looks {
  width: number
  height: number
  duration: number
  /** Grey values, and the different ones among them, of each picture. */
  pixels: number[][]
  shades: number[][]
}

/** Loads a picture or a video and looks at it: at its start, its middle and its end. */
async function looks({ kind, data, type }: { kind: 'image' | 'video'; data: string; type: string }): Promise<Looks> {
  const bytes = Uint8Array.from(atob(data), (unit) => unit.charCodeAt(0))
  const address = URL.createObjectURL(new Blob([bytes], { type }))
  const canvas = document.createElement('canvas')
  canvas.width = 320
  canvas.height = 180
  const pen = canvas.getContext('2d', { willReadFrequently: true })!
  const pixels: number[][] = []
  const look = (source: CanvasImageSource) => {
    pen.drawImage(source, 0, 0, canvas.width, canvas.height)
    const colours = pen.getImageData(0, 0, canvas.width, canvas.height).data
    const greys = []
    for (let at = 0; at < colours.length; at += 4)
      greys.push(Math.round((colours[at]! + colours[at + 1]! + colours[at + 2]!) / 3))
    pixels.push(greys)
  }
  const shades = () => pixels.map((greys) => [...new Set(greys)])
  if (kind === 'image') {
    const image = new Image()
    image.src = address
    await image.decode()
    look(image)
    return { width: image.naturalWidth, height: image.naturalHeight, duration: 0, pixels, shades: shades() }
  }
  const video = document.createElement('video')
  video.muted = true
  video.src = address
  await new Promise((loaded, refused) => {
    video.onloadeddata = loaded
    video.onerror = () => refused(new Error(video.error?.message))
  })
  // A busy machine has found the place before it shows the picture of it: the one before may still stand there.
  let shown = Number.NaN
  const watch = () =>
    video.requestVideoFrameCallback((_, { mediaTime }) => {
      shown = mediaTime
      watch()
    })
  watch()
  for (const at of [0.1, 0.5, 0.99]) {
    const found = new Promise((done) => {
      video.onseeked = done
    })
    video.currentTime = at * video.duration
    await found
    for (let tries = 0; tries < 300 && !(Math.abs(shown - video.currentTime) < 0.1); tries++)
      await new Promise(requestAnimationFrame)
    look(video)
    // A busy machine has found the place before it has decoded the picture.
    for (let tries = 0; tries < 100 && new Set(pixels.at(-1)).size === 1; tries++) {
      await new Promise(requestAnimationFrame)
      pixels.pop()
      look(video)
    }
  }
  const { videoWidth: width, videoHeight: height, duration } = video
  return { width, height, duration, pixels, shades: shades() }
}

/** In a page of its own, which knows nothing of the bench. */
async function playBack(context: BrowserContext, clip: Download): Promise<Looks> {
  const blank = await context.newPage()
  const data = (await bytesOf(clip)).toString('base64')
  const type = clip.suggestedFilename().endsWith('mp4') ? 'video/mp4' : 'video/webm'
  const seen = await blank.evaluate(looks, { kind: 'video' as const, data, type })
  await blank.close()
  return seen
}

/** Mean difference of two pictures in steps of grey. */
const difference = (a: number[], b: number[]) => a.reduce((sum, grey, i) => sum + Math.abs(grey - b[i]!), 0) / a.length
