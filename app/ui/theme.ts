/** The theme's colours for drawing on a canvas, where CSS variables do not reach. */

/** A colour that may name a CSS variable, `var(--damage)`, as the page has it now. */
export function cssColour(colour: string, from: Element = document.documentElement): string {
  const name = /^var\((--[\w-]+)\)$/.exec(colour)?.[1]
  return name ? getComputedStyle(from).getPropertyValue(name).trim() || 'currentcolor' : colour
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
