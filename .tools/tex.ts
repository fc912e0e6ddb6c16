// Equations of the Model page: TeX between `tex` backticks, and between $ in `say` backticks, becomes MathML when the page is built.
import temml from 'temml'
import type { Plugin } from 'vite'

/**
 * TeX of a symbol as the scenario's schema writes it: `R_wh` has an upright subscript, as ISO 80000 sets a descriptive one. One in
 * braces stays as it is, so `F_{n}` has an italic one.
 */
const symbols = (source: string) =>
  source
    .replaceAll('µ', 'μ')
    .replaceAll('π', '\\mathrm{\\pi}')
    .replace(/_([A-Za-z0-9]+)/g, '_{\\mathrm{$1}}')

/** MathML of one formula. Throws for TeX that cannot be read. */
export const mathml = (source: string, display: boolean): string =>
  temml.renderToString(symbols(source), {
    displayMode: display,
    throwOnError: true,
    macros: { '\\dd': '\\mathrm{d}' },
  })

/** HTML of a sentence with formulas between $. */
export const sentence = (source: string): string =>
  source
    .split('$')
    .map((piece, place) => (place % 2 === 0 ? escaped(piece) : mathml(piece, false)))
    .join('')

const escaped = (text: string) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')

/** @param modules path of the modules that are translated */
export const tex = (modules: RegExp): Plugin => ({
  name: 'jawbench-tex',
  enforce: 'pre',
  transform: {
    filter: { id: modules },
    handler(code) {
      const made = code.replace(
        /\b(tex|say)`([^`]*)`/g,
        (_, tag: string, source: string) => `${tag}\`${tag === 'tex' ? mathml(source, true) : sentence(source)}\``,
      )
      return { code: made, map: null }
    },
  },
})
