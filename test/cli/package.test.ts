/** The package as others install it, and the scripts of the README, taken from there, on top of it. */
import { spawnSync } from 'node:child_process'
import { cpSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import { delimiter, join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { copyTree, makeScratch, scratch } from '../../.tools/scratch.mjs'
import { programOf } from '../../.tools/setup.mjs'

const readme = readFileSync('README.md', 'utf8')
const sample = (language: string) =>
  new RegExp(`^\`\`\`${language}\\n([\\s\\S]*?)^\`\`\`$`, 'm').exec(readme)?.[1] ?? ''
const hasPython = spawnSync('python3', ['--version']).status === 0

/** A folder of somebody else's, inside this tree so that what the package depends on is found in the folders above. */
const user = join(scratch, 'user')
const bin = join(user, 'node_modules/.bin')

function run(command: string, args: string[], cwd = user) {
  const env = { ...process.env, PATH: `${bin}${delimiter}${process.env.PATH}` }
  const { status, stdout, stderr } = spawnSync(command, args, { cwd, env, encoding: 'utf8' })
  return { status, stdout, stderr }
}

/** A script of the user's that asks for what there is not. */
const WRONG = "import { grip, PRESETS } from 'jawbench'\ngrip(PRESETS[0]!.scenario, 'hope')\n"

/** Compiles both scripts of the user's as strictly as can be; what the compiler says of each. */
function compile(files: Record<string, string>): string[] {
  const compilerOptions = { strict: true, module: 'nodenext', target: 'es2023', types: ['node'] }
  for (const [file, text] of Object.entries(files)) writeFileSync(join(user, file), text)
  writeFileSync(join(user, 'tsconfig.json'), JSON.stringify({ compilerOptions, files: Object.keys(files) }))
  return run(process.execPath, [programOf('typescript', 'bin/tsc'), '-p', '.'])
    .stdout.trim()
    .split('\n')
}

describe.runIf(process.platform !== 'win32')('the package', () => {
  let said: string[]

  beforeAll(() => {
    makeScratch()
    const tree = join(scratch, 'packed')
    copyTree(tree)
    mkdirSync(bin, { recursive: true })
    const packed = run('npm', ['pack', '--silent'], tree)
    expect(packed.stderr).toBe('')
    const [archive = ''] = readdirSync(tree).filter((name) => name.endsWith('.tgz'))
    expect(run('tar', ['-xzf', archive], tree).status).toBe(0)
    cpSync(join(tree, 'package'), join(user, 'node_modules/jawbench'), { recursive: true })
    const { bin: programs } = JSON.parse(readFileSync(join(user, 'node_modules/jawbench/package.json'), 'utf8'))
    symlinkSync(join('../jawbench', programs.jawbench), join(bin, 'jawbench'))
    writeFileSync(join(user, 'package.json'), '{ "type": "module" }')
    said = compile({ 'sample.ts': sample('ts'), 'wrong.ts': WRONG })
  }, 3_600_000)

  it('holds what it hands out, and nothing of the house', () => {
    const names = readdirSync(join(user, 'node_modules/jawbench'), { recursive: true, encoding: 'utf8' })
    expect(names).toEqual(expect.arrayContaining(['README.md', 'package.json', 'lib/jawbench.mjs', 'lib/index.mjs']))
    expect(names.filter((name) => /(?<!\.d)\.tsx?$|^(app|sim|test|e2e|\.tools)/.test(name))).toEqual([])
  })

  it('asks for the packages that it imports, and for no other', () => {
    const folder = join(user, 'node_modules/jawbench')
    const files = readdirSync(join(folder, 'lib'), { recursive: true, encoding: 'utf8' })
    const texts = files
      .filter((name) => /\.(mjs|d\.ts)$/.test(name))
      .map((name) => readFileSync(join(folder, 'lib', name), 'utf8'))
    const imported = texts.flatMap((text) => [
      ...text.matchAll(/\b(?:from|import)\s*\(?["']((?:@[\w.-]+\/)?[a-z][\w.-]*)(?=["'/])/g),
    ])
    const names = new Set(imported.map(([, name]) => name))
    const { dependencies } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'))
    expect([...names].sort()).toEqual(Object.keys(dependencies).sort())
  })

  it('has jawbench as its program', () => {
    const { status, stdout } = run('jawbench', ['presets'])
    expect(status).toBe(0)
    expect(stdout).toContain('teapot')
  })

  it('is typed, the sample of the README runs in TypeScript, and in Python it says the same', ({ annotate }) => {
    expect(said.filter((line) => !line.startsWith('wrong.ts'))).toEqual([])
    const typed = run(process.execPath, ['sample.js'])
    expect(typed.stderr).toBe('')
    const lines = typed.stdout.trim().split('\n')
    expect(lines).toHaveLength(3)
    for (const line of lines) expect(line).toMatch(/^[\d.]+ (held|slipped|dropped|marked|crushed) \d+\.\d+$/)
    if (!hasPython) return annotate('There is no Python here; its sample was not run.')
    writeFileSync(join(user, 'sample.py'), sample('python'))
    const { stdout, stderr } = run('python3', ['sample.py'])
    expect(stderr).toBe('')
    expect(stdout).toBe(typed.stdout)
  })

  it('lets a script that is wrongly typed not pass', () => {
    expect(said.filter((line) => line.startsWith('wrong.ts(2,') && line.includes('"hope"'))).toHaveLength(1)
  })

  it('is shown in ten lines of each language', () => {
    for (const language of ['ts', 'python']) expect(sample(language).trim().split('\n').length).toBeLessThanOrEqual(10)
  })
})
