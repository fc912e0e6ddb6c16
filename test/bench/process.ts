/** One part of the benchmarks in a process of its own. */
import { spawnSync } from 'node:child_process'

/** The argument that names the part for which this program was started by itself. */
export const RUN = '--run='

/** Runs a part to its end; `output` says where what it prints goes. */
export const spawnPart = (name: string, output: 'inherit' | 'pipe') =>
  spawnSync(process.execPath, ['--expose-gc', process.argv[1]!, RUN + name], {
    stdio: ['ignore', output, 'inherit'],
    encoding: 'utf8',
  })
