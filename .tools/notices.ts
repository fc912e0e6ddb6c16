// The licences of all that the built page carries from others: writes dist/notices.html.
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Plugin } from 'vite'
import { root } from './setup.mjs'

interface Notice {
  name: string
  version: string
  licence: string
  text: string
}

/** What is no file of a package, but comes of one: the tools' own helpers, and the library compiled into the core. */
const MADE_BY: [id: RegExp, name: string][] = [
  [/^\0vite\//, 'vite'],
  [/^\0rolldown\//, 'rolldown'],
  [/^\0virtual:core$/, 'assemblyscript'],
]

/** In the licence file of a tool: from here on it speaks of the tool's own parts, which do not go into the page. */
const TOOLS_OWN = /^# Licenses of bundled dependencies$/m

/**
 * `watch` notes what a bundle takes in: one for the page, and one for each of its workers. `write` writes the notices into the page's
 * bundle, and lets the build fail where a package comes without its licence.
 */
export function notices(): { watch: () => Plugin; write: () => Plugin } {
  const packages = new Set<string>()
  const note = (id: string) => {
    const path = id.replaceAll('\\', '/').replace(/[?#].*$/, '')
    const found = /^(.*\/)?node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(path)?.[2]
    const name = found ?? MADE_BY.find(([pattern]) => pattern.test(id))?.[1]
    if (name) packages.add(name)
  }
  return {
    watch: () => ({
      name: 'jawbench-notices-watch',
      apply: 'build',
      buildEnd() {
        for (const id of this.getModuleIds()) note(id)
      },
      generateBundle(_options, bundle) {
        for (const item of Object.values(bundle))
          if (item.type === 'asset') item.originalFileNames.forEach(note)
          else item.moduleIds.forEach(note)
      },
    }),
    write: () => ({
      name: 'jawbench-notices',
      apply: 'build',
      generateBundle: {
        order: 'post',
        handler() {
          const names = [...withInner(packages)].sort()
          this.emitFile({ type: 'asset', fileName: 'notices.html', source: page(names.map(noticeOf)) })
        },
      },
    }),
  }
}

/** And what these depend on: some carry that within their own files. Types are no part of the page, nor are the parts of a tool. */
function withInner(packages: Set<string>): Set<string> {
  const found = new Set(packages)
  for (const name of found)
    if (!MADE_BY.some(([, tool]) => tool === name))
      for (const inner of Object.keys(manifestOf(name).dependencies ?? {}))
        if (!inner.startsWith('@types/')) found.add(inner)
  return found
}

const manifestOf = (name: string) => JSON.parse(readFileSync(join(root, 'node_modules', name, 'package.json'), 'utf8'))

/** A package without a licence file may have the text at the end of its README, under a heading. */
function inReadme(folder: string): string {
  const readme = readdirSync(folder).find((file) => /^readme\b/i.test(file))
  const [, text = ''] = readme ? readFileSync(join(folder, readme), 'utf8').split(/^#+ licen[cs]e$/im) : []
  return /permission/i.test(text) ? text.trim() : ''
}

/** Throws an Error where the package comes without the text of its licence. */
function noticeOf(name: string): Notice {
  const folder = join(root, 'node_modules', name)
  const { version, license } = manifestOf(name)
  const files = readdirSync(folder).filter((file) => /^(licen[cs]e|copying|notice)\b/i.test(file))
  const texts = files.sort().map((file) => readFileSync(join(folder, file), 'utf8').split(TOOLS_OWN)[0]?.trim() ?? '')
  if (!files.some((file) => !/^notice/i.test(file))) texts.push(inReadme(folder))
  if (texts.includes('')) throw new Error(`${name} comes without the text of its licence.`)
  return { name, version, licence: license, text: texts.join('\n\n') }
}

const escaped = (text: string) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;')

const page = (list: Notice[]) => `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <meta name="color-scheme" content="light dark" />
    <link rel="icon" href="./icon.svg" type="image/svg+xml" />
    <title>Jawbench: licences</title>
    <style>
      body { max-width: 46rem; margin: 2rem auto; padding: 0 1rem; font: 1rem/1.5 system-ui, sans-serif; }
      pre { white-space: pre-wrap; overflow-wrap: anywhere; font-size: 0.8125rem; }
    </style>
  </head>
  <body>
    <h1>Licences</h1>
    <p>Jawbench carries the work of others, under the terms that follow.</p>
${list.map(section).join('\n')}
  </body>
</html>
`

const section = ({ name, version, licence, text }: Notice) => `    <section>
      <h2>${escaped(name)} ${escaped(version)}</h2>
      <p>${escaped(licence)}</p>
      <pre>${escaped(text)}</pre>
    </section>`
