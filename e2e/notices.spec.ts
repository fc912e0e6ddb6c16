import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from './support.ts'

/** Packages that the sources of the page import, and what these depend on. */
function carried(): string[] {
  const sources = ['app', 'sim']
    .flatMap((room) => readdirSync(room, { recursive: true, encoding: 'utf8' }).map((name) => `${room}/${name}`))
    .filter((file) => /\.(tsx?|css)$/.test(file) && !file.startsWith('sim/cli/'))
  const imported = sources.flatMap((file) =>
    Array.from(
      readFileSync(file, 'utf8').matchAll(
        /^(?:@import|import|export|\} from)(?! type)[^;\n]*?["']((?:@[\w-]+\/)?[a-z][\w.-]*)(?:\/[^"']*)?["']/gm,
      ),
      ([, name = '']) => name,
    ),
  )
  const { packages } = JSON.parse(readFileSync('package-lock.json', 'utf8'))
  const found = new Set(imported)
  for (const name of found)
    for (const inner of Object.keys(packages[`node_modules/${name}`]?.dependencies ?? {})) found.add(inner)
  return [...found].filter((name) => packages[`node_modules/${name}`] && !name.startsWith('@types/'))
}

test.use({ offlineCopy: true })

test('the licences of all that the page carries are one press away, also without a network', async ({
  page,
  context,
}) => {
  await page.goto('./')
  const opened = context.waitForEvent('page')
  await page.getByRole('link', { name: 'Licences' }).click()
  const notices = await opened
  await expect(notices.getByRole('heading', { name: 'Licences', exact: true })).toBeVisible()
  const names = carried()
  expect(names).toEqual(
    expect.arrayContaining(['react-dom', 'scheduler', 'uplot', '@fontsource-variable/source-sans-3']),
  )
  for (const name of [...names, 'assemblyscript']) {
    const { version } = JSON.parse(readFileSync(`node_modules/${name}/package.json`, 'utf8'))
    const section = notices
      .locator('section')
      .filter({ has: notices.getByRole('heading', { name: `${name} ${version}`, exact: true }) })
    await expect(section, name).toHaveCount(1)
    await expect(section.locator('pre'), name).toContainText(/permission|licen[cs]e/i)
  }
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null)
  await context.setOffline(true)
  await notices.reload()
  await expect(notices.getByRole('heading', { name: 'Licences', exact: true })).toBeVisible()
})
