/** The theme's colours for drawing on a canvas, where CSS variables do not reach. */

/** Colours as the page has them now; asking the page for each of them at every frame costs more than the drawing. */
const known = new Map<string, string>()
let watched = false

/** A colour that may name a CSS variable, `var(--damage)`, as the page has it now. */
export function cssColour(colour: string): string {
  const value = known.get(colour)
  if (value !== undefined) return value
  const name = /^var\((--[\w-]+)\)$/.exec(colour)?.[1]
  if (!name) return colour
  if (!watched) onThemeChange(() => known.clear())
  watched = true
  const found = getComputedStyle(document.documentElement).getPropertyValue(name).trim()
  if (found === '') return 'currentcolor'
  known.set(colour, found)
  return found
}

/** Calls back when the theme changes: by the page's own switch or by the system's. Returns what ends it. */
export function onThemeChange(changed: () => void): () => void {
  const observer = new MutationObserver(changed)
  observer.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme', 'class', 'style'] })
  const system = matchMedia('(prefers-color-scheme: dark)')
  system.addEventListener('change', changed)
  return () => {
    observer.disconnect()
    system.removeEventListener('change', changed)
  }
}
