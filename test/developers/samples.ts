/**
 * Samples in a Markdown file that say where they belong, in the words after the language of their fence:
 * `file=PATH` puts the sample there as a new file; `after="TEXT"` puts it into the file instead, below the line that holds the text,
 * and `instead="TEXT"` in place of that line, with its imports at the head of the file; `try="COMMAND"` is run once all samples are in.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'

export interface Sample {
  file: string
  after?: string
  instead?: string
  try?: string
  text: string
}

const KEYS = new Set(['file', 'after', 'instead', 'try'])

/** The samples that name a file, in their order. Throws an Error for a word that is none of the four. */
export function samplesIn(markdown: string): Sample[] {
  return Array.from(markdown.matchAll(/^```\w+ +(\S.*)\n([\s\S]*?)^```$/gm), ([, words = '', text = '']) => {
    const said = Array.from(words.matchAll(/(\S+?)=(?:"([^"]*)"|(\S+))/g), ([, key = '', quoted, bare]) => {
      if (!KEYS.has(key)) throw new Error(`${key} in "${words}" is none of ${[...KEYS].join(', ')}`)
      return [key, quoted ?? bare]
    })
    const sample = Object.fromEntries(said)
    if (!sample.file) throw new Error(`"${words}" names no file`)
    return { ...sample, text }
  })
}

/** Puts a sample into a tree. Throws an Error where its place is taken, or not there. */
export function place(tree: string, { file, after, instead, text }: Sample) {
  const path = join(tree, file)
  const anchor = after ?? instead
  if (anchor === undefined) {
    if (existsSync(path)) throw new Error(`${file} is there already`)
    mkdirSync(dirname(path), { recursive: true })
    writeFileSync(path, text)
    return
  }
  const lines = readFileSync(path, 'utf8').split('\n')
  const at = lines.findIndex((line) => line.includes(anchor))
  if (at < 0) throw new Error(`${file} has no line with ${anchor}`)
  const [imports, rest] = [true, false].map((head) =>
    text.split('\n').filter((line) => line !== '' && line.startsWith('import ') === head),
  ) as [string[], string[]]
  if (after === undefined) lines.splice(at, 1, ...rest)
  else lines.splice(at + 1, 0, ...rest)
  writeFileSync(path, [...imports, ...lines].join('\n'))
}
