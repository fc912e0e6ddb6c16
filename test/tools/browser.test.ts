import { resolve } from 'node:path'
import { expect, it } from 'vitest'
import { ensureFirefox, whyNotDriven } from '../../.tools/browser.mjs'

const OLD = resolve('test/tools/fake-firefox.mjs')

it('says what a Firefox lacks that is too old for its driver', async () => {
  const why = await whyNotDriven(OLD)
  expect(why).toMatch(/fake-firefox\.mjs cannot be driven by Playwright: .*unknown command/)
  expect(why).not.toContain('\n')
})

it('says it of a program that is no Firefox', async () => {
  expect(await whyNotDriven(process.execPath)).toContain('cannot be driven by Playwright: ')
})

it('hands on the reason where one Firefox was asked for, and installs no other', async () => {
  const before = process.env.FIREFOX_PATH
  process.env.FIREFOX_PATH = OLD
  try {
    expect(await ensureFirefox()).toEqual({ path: OLD, lacking: expect.stringContaining('unknown command') })
  } finally {
    if (before === undefined) delete process.env.FIREFOX_PATH
    else process.env.FIREFOX_PATH = before
  }
})
