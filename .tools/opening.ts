// What makes the built page open fast: the files of the first view are fetched side by side instead of one after the other.
import type { HtmlTagDescriptor, Plugin } from 'vite'

/** What is read of a part of the bundle. */
interface Item {
  fileName: string
  facadeModuleId?: string | null
  imports?: string[]
  viteMetadata?: { importedCss: Set<string> }
}

/** @param modules ends of the paths of modules that the page imports when it starts */
export function opening(...modules: string[]): Plugin {
  return {
    name: 'jawbench-opening',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler(html, { bundle = {} }) {
        const items = Object.values(bundle) as Item[]
        const scripts = new Set<string>()
        const styles = new Set<string>()
        const want = (item: Item) => {
          if (scripts.has(item.fileName)) return
          scripts.add(item.fileName)
          for (const style of item.viteMetadata?.importedCss ?? []) styles.add(style)
          for (const file of item.imports ?? []) for (const inner of items) if (inner.fileName === file) want(inner)
        }
        for (const item of items) if (modules.some((end) => item.facadeModuleId?.endsWith(end))) want(item)
        const missing = (files: Set<string>) => [...files].filter((file) => !html.includes(file))
        return [
          ...missing(scripts).map((file) => link(file, { rel: 'modulepreload' })),
          ...missing(styles).map((file) => link(file, { rel: 'preload', as: 'style' })),
        ]
      },
    },
  }
}

const link = (file: string, attrs: Record<string, string>): HtmlTagDescriptor => ({
  tag: 'link',
  attrs: { ...attrs, crossorigin: true, href: `./${file}` },
  injectTo: 'head',
})

/**
 * A library that hands itself out as one default object hides from the bundler which parts of it are used. Taken as a namespace it
 * does not: `import Type from 'typebox'` in the sources becomes `import * as Type from 'typebox'` in the build.
 */
export function asNamespace(library: string): Plugin {
  const statement = new RegExp(`^import (\\w+) from '(${library}(?:/\\w+)?)'`, 'gm')
  return {
    name: 'jawbench-as-namespace',
    apply: 'build',
    enforce: 'pre',
    transform(code, id) {
      const changed = /\.tsx?$/.test(id) ? code.replace(statement, "import * as $1 from '$2'") : code
      return changed === code ? null : { code: changed, map: null }
    },
  }
}

/**
 * The schema library judges addresses, dates and names of hosts; no schema here asks for any of them, so the build leaves them out.
 * One that did would be told so at its first check instead of being taken as sound.
 */
export function withoutFormats(): Plugin {
  return {
    name: 'jawbench-without-formats',
    apply: 'build',
    load: {
      filter: { id: /node_modules.typebox.build.format.index\.mjs$/ },
      handler: () => `const absent = (format) => { throw new TypeError('the build carries no format ' + format) }
export const Format = { Has: absent, Get: absent, Test: absent }
export default Format`,
    },
  }
}
