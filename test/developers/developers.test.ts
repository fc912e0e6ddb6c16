/** What the guide for developers shows is done, in a copy of the tree: it compiles, and what it promises runs. */
import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { copyTree, makeScratch, scratch } from '../../.tools/scratch.mjs'
import { programOf, root } from '../../.tools/setup.mjs'
import { place, samplesIn } from './samples.ts'

/** The project that compiles what stands in a file. */
const projectOf = ({ file }: { file: string }) =>
  `tsconfig.${/^app\//.test(file) ? 'app' : /^sim\/(?!cli\/)/.test(file) ? 'sim' : 'node'}.json`

describe('the samples of DEVELOPERS.md', () => {
  const samples = samplesIn(readFileSync(join(root, 'DEVELOPERS.md'), 'utf8'))
  const tree = join(scratch, 'developers')
  const run = (...command: string[]) => {
    const { status, stdout, stderr } = spawnSync(process.execPath, command, { cwd: tree, encoding: 'utf8' })
    return { status, said: `${stdout}${stderr}` }
  }

  beforeAll(() => {
    makeScratch()
    copyTree(tree)
    for (const sample of samples) place(tree, sample)
  }, 600_000)

  it('say where they belong', () => expect(samples.length).toBeGreaterThan(2))

  it('compile in the places that they name', () => {
    const compiled = samples.filter(({ file }) => /\.tsx?$/.test(file))
    const { status, said } = run(programOf('typescript', 'bin/tsc'), '-b', ...new Set(compiled.map(projectOf)))
    expect(said).toBe('')
    expect(status).toBe(0)
  })

  it.each(samples.flatMap((sample) => sample.try ?? []))('do what they promise: %s', (command) => {
    const [program = '', ...args] = command.split(' ')
    const known: Record<string, string> = {
      jawbench: '.tools/jawbench.mjs',
      vitest: programOf('vitest', 'vitest.mjs'),
    }
    const { status, said } = run(known[program] ?? program, ...args)
    expect(status, said).toBe(0)
  })
})

describe('a sample', () => {
  const fence = (words: string, text: string) => `Words.\n\n\`\`\`ts ${words}\n${text}\n\`\`\`\n`
  const folder = () => {
    const tree = mkdtempSync(join(tmpdir(), 'jawbench-samples-'))
    mkdirSync(join(tree, 'a'))
    writeFileSync(join(tree, 'a/b.ts'), 'one\n  two()\nthree\n')
    return tree
  }
  const placed = (words: string, text: string) => {
    const tree = folder()
    for (const sample of samplesIn(fence(words, text))) place(tree, sample)
    return readFileSync(join(tree, 'a/b.ts'), 'utf8')
  }

  it('is read with its words; others are left alone', () => {
    expect(samplesIn(fence('file=a/c.ts try="jawbench presets"', 'x'))).toEqual([
      { file: 'a/c.ts', try: 'jawbench presets', text: 'x\n' },
    ])
    expect(samplesIn('```ts\nx\n```\n\n```\ny\n```\n')).toEqual([])
  })

  it('goes below a line or in place of it, its imports to the head', () => {
    expect(placed('file=a/b.ts after="two("', "import c from 'c'\n  c()")).toBe(
      "import c from 'c'\none\n  two()\n  c()\nthree\n",
    )
    expect(placed('file=a/b.ts instead=two', '  c()')).toBe('one\n  c()\nthree\n')
  })

  it('is refused where its place is taken or missing, and where its words are unknown', () => {
    expect(() => placed('file=a/b.ts', 'x')).toThrow('a/b.ts is there already')
    expect(() => placed('file=a/b.ts after=four', 'x')).toThrow('no line with four')
    expect(() => placed('after=one', 'x')).toThrow('names no file')
    expect(() => placed('file=a/b.ts before=one', 'x')).toThrow('before in "file=a/b.ts before=one"')
  })
})
