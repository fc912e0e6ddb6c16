// Hands the compiled core to whoever imports 'virtual:core': its bytes as base64, so that workers and command line carry it with them.
import { join } from 'node:path'
import { compiledCore, ROOMS } from './core.mjs'
import { root } from './setup.mjs'

const NAME = 'virtual:core'

/** A plugin of Vite, Vitest and Rolldown alike. */
export const core = () => ({
  name: 'jawbench-core',
  resolveId: (/** @type {string} */ id) => (id === NAME ? `\0${NAME}` : null),
  async load(/** @type {string} */ id) {
    if (id !== `\0${NAME}`) return null
    return `export default '${(await compiledCore()).toString('base64')}'`
  },
  /** @param {{ file: string, server: import('vite').ViteDevServer }} change a dev server compiles the core anew when it changes */
  handleHotUpdate({ file, server }) {
    if (ROOMS.some((room) => file.startsWith(join(root, room)))) server.ws.send({ type: 'full-reload' })
  },
})
