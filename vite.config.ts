import { fileURLToPath } from 'node:url'
import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'
import { core } from './.tools/core-plugin.mjs'
import { notices } from './.tools/notices.ts'
import { contentPolicy, offline } from './.tools/offline.ts'
import { asNamespace, opening, withoutFormats } from './.tools/opening.ts'
import { tex } from './.tools/tex.ts'

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))

// Cross-origin isolation gives the page SharedArrayBuffer and a finer clock.
const headers = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'X-Content-Type-Options': 'nosniff',
}
const { watch, write } = notices()

/** No module of this library does anything by being imported, though its package does not say so. */
const treeshake = { moduleSideEffects: [{ test: /node_modules.typebox/, sideEffects: false }] }

export default defineConfig({
  root: here('app'),
  publicDir: here('public'),
  base: './',
  appType: 'mpa', // what is not there is 404 and not the page
  cacheDir: here('node_modules/.vite'),
  build: {
    outDir: here('dist'),
    emptyOutDir: true,
    modulePreload: { polyfill: false }, // where it is unknown, the page opens all the same
    rolldownOptions: {
      treeshake,
      output: {
        // What the first view needs comes in four files and not in forty: each group takes all that its module imports.
        codeSplitting: {
          groups: [
            { name: 'first', test: /preload-helper|\/app\/worker\/simulators\.ts$/, priority: 3 },
            { name: 'start', test: /\/app\/store\/start\.ts$/, priority: 2 },
            { name: 'page', test: /\/app\/page\.tsx$/, priority: 1 },
            { name: 'charts', test: /\/traces\/TraceChart\.tsx$/, priority: 0 },
          ],
        },
      },
    },
  },
  worker: {
    format: 'es',
    plugins: () => [core(), asNamespace('typebox'), withoutFormats(), watch()],
    rolldownOptions: { treeshake },
  },
  server: { host: '127.0.0.1', headers },
  preview: {
    host: '127.0.0.1',
    port: 4173,
    strictPort: true,
    headers: { ...headers, 'Content-Security-Policy': `${contentPolicy}; frame-ancestors 'none'` },
  },
  plugins: [
    core(),
    tex(/\/app\/views\/model\//),
    asNamespace('typebox'),
    withoutFormats(),
    react(),
    opening('app/store/start.ts', 'app/page.tsx', 'app/views/bench/traces/TraceChart.tsx'),
    watch(),
    write(),
    offline(here('app/offline/service.worker.ts')),
  ],
})
