// Makes the built page work without a network: writes dist/sw.js, which knows every file of the build by name.
import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { type Plugin, type ResolvedConfig, transformWithOxc } from 'vite'

/** What the page may load: its own files only. Inline styles are needed by charts and by axe. */
export const contentPolicy = [
  "default-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self' data:",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ')

/** @param source the service worker, which finds the build's file names in FILES and their fingerprint in VERSION */
export function offline(source: string): Plugin {
  let config: ResolvedConfig
  return {
    name: 'jawbench-offline',
    apply: 'build',
    configResolved(resolved) {
      config = resolved
    },
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: contentPolicy },
        injectTo: 'head-prepend',
      },
    ],
    generateBundle: {
      order: 'post',
      async handler(_options, bundle) {
        const contents = new Map<string, string | Uint8Array>()
        for (const file of readdirSync(config.publicDir, { recursive: true, withFileTypes: true })) {
          if (!file.isFile()) continue
          const path = join(file.parentPath, file.name)
          contents.set(path.slice(config.publicDir.length + 1).replaceAll('\\', '/'), readFileSync(path))
        }
        for (const item of Object.values(bundle)) {
          contents.set(item.fileName, item.type === 'chunk' ? item.code : item.source)
        }
        const files = [...contents.keys()].sort()
        const worker = readFileSync(source, 'utf8')
        const hash = createHash('sha256').update(worker)
        for (const file of files) hash.update(file).update(contents.get(file) ?? '')
        const { code } = await transformWithOxc(worker, source)
        const facts = `const FILES = ${JSON.stringify(files)}\nconst VERSION = '${hash.digest('hex').slice(0, 12)}'\n`
        this.emitFile({ type: 'asset', fileName: 'sw.js', source: facts + code })
      },
    },
  }
}
