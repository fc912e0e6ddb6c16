// Compiles the core of the simulator (sim/cycle/core.ts and what it imports) ahead of time to WebAssembly, once per state of its sources.
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { alone } from './lock.mjs'
import { cache, root, SetupError } from './setup.mjs'
import { fingerprint } from './sources.mjs'

const ENTRY = 'sim/cycle/core.ts'
export const ROOMS = ['sim/core', 'sim/axis', 'sim/control', 'sim/job', 'sim/strategy', 'sim/cycle']

/** The compiled module's bytes. Throws a SetupError with the compiler's own words if the sources cannot be compiled. */
export async function compiledCore() {
  const key = fingerprint(...ROOMS, '.tools/core.mjs', 'package-lock.json')
  const file = join(cache, `core-${key}.wasm`)
  if (!existsSync(file)) await alone(root, 'core', async () => existsSync(file) || compile(file))
  return readFileSync(file)
}

/** Writes beside the target first and renames: who does not wait for the lock never reads half a file. */
async function compile(/** @type {string} */ file) {
  const { default: asc } = await import('assemblyscript/asc')
  /** @type {Uint8Array | null} */
  let binary = null
  const said = asc.createMemoryStream()
  const { error } = await asc.main(
    [
      ENTRY,
      '--outFile',
      'core.wasm',
      '--runtime',
      'stub',
      '-O3',
      '--converge',
      '--noAssert',
      '--enable',
      'simd',
      '--use',
      'abort=',
    ],
    {
      stdout: said,
      stderr: said,
      readFile: (/** @type {string} */ name) => source(name),
      writeFile(/** @type {string} */ name, /** @type {string | Uint8Array} */ content) {
        if (name === 'core.wasm' && typeof content !== 'string') binary = content
      },
      listFiles: () => [],
    },
  )
  if (error || !binary) throw new SetupError(`The core could not be compiled.\n${said.toString()}\n${error ?? ''}`)
  mkdirSync(cache, { recursive: true })
  const draft = `${file}.${process.pid}`
  writeFileSync(draft, await inlined(binary))
  renameSync(draft, file)
  for (const old of readdirSync(cache))
    if (old.startsWith('core-') && old.endsWith('.wasm') && join(cache, old) !== file)
      rmSync(join(cache, old), { force: true })
}

/** Expressions up to which a function is written out in place always, and where it calls nothing and has no loop. */
const SMALL = 60
const LEAF = 200
const ANY = 2 ** 32 - 1

/**
 * The same module optimised once more, with what a step and a sample call written out in place: an engine keeps nothing in registers
 * across a call. The optimiser still holds what the compiler has told it, so all that matters is said anew.
 */
async function inlined(/** @type {Uint8Array} */ binary) {
  const { default: binaryen } = await import('assemblyscript/binaryen')
  const module = binaryen.readBinary(binary)
  const { MutableGlobals, SignExt, NontrappingFPToInt, BulkMemory, BulkMemoryOpt, SIMD128 } = binaryen.Features
  module.setFeatures(MutableGlobals | SignExt | NontrappingFPToInt | BulkMemory | BulkMemoryOpt | SIMD128)
  binaryen.setOptimizeLevel(3)
  binaryen.setShrinkLevel(0)
  binaryen.setAlwaysInlineMaxSize(SMALL)
  binaryen.setFlexibleInlineMaxSize(LEAF)
  binaryen.setOneCallerInlineMaxSize(ANY)
  binaryen.setAllowInliningFunctionsWithLoops(false)
  binaryen.setFastMath(false)
  module.optimize()
  const optimised = module.emitBinary()
  module.dispose()
  return optimised
}

/** A source as the compiler takes it: it knows no type-only imports, and `native.ts` has a half of its own. */
function source(/** @type {string} */ name) {
  const own = name.replace(/core\/native\.ts$/, 'core/native.wasm.ts')
  const file = join(root, own)
  if (!existsSync(file)) return null
  return readFileSync(file, 'utf8')
    .replace(/^import type /gm, 'import ')
    .replace(/^import \{[^}]*\}/gm, (names) => names.replace(/\btype /g, ''))
    .replace(/^( *)\/\/ @inline$/gm, '$1@inline')
}
