import { fileURLToPath } from 'node:url'
import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'
import { core } from './.tools/core-plugin.mjs'
import { contentPolicy, offline } from './.tools/offline.ts'
import { tex } from './.tools/tex.ts'

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))

// Cross-origin isolation gives the page SharedArrayBuffer and a finer clock.
const isolation = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
}

export default defineConfig({
  root: here('app'),
  publicDir: here('public'),
  base: './',
  cacheDir: here('node_modules/.vite'),
  build: { outDir: here('dist'), emptyOutDir: true },
  worker: { format: 'es', plugins: () => [core()] },
  server: { host: '127.0.0.1', headers: isolation },
  preview: {
    host: '127.0.0.1',
    port: 4173,
    strictPort: true,
    headers: { ...isolation, 'Content-Security-Policy': contentPolicy },
  },
  plugins: [core(), tex(/\/app\/views\/model\//), react(), offline(here('app/offline/service.worker.ts'))],
})
