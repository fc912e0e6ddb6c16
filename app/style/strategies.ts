import { STRATEGIES } from '../../sim/index.ts'

/** Colours of strategies as custom properties, `--strategy-ID` for lines and `--strategy-ID-text` for words. */
const colours = (shade: 'light' | 'dark') =>
  STRATEGIES.map(
    ({ id, look }) => `--strategy-${id}: ${look[shade].line}; --strategy-${id}-text: ${look[shade].text};`,
  ).join(' ')

/** What belongs to a strategy is drawn in its colour and with its border. */
const runs = STRATEGIES.map(
  ({ id, look }) =>
    `[data-strategy="${id}"] { --run-colour: var(--strategy-${id}); --run-text: var(--strategy-${id}-text); --run-border: ${look.border}; }`,
)

/** The looks that the strategies bring, beside the tokens; call once, before anything is drawn. */
export function dressStrategies() {
  const sheet = document.createElement('style')
  sheet.textContent = [
    `:root, [data-theme="light"] { ${colours('light')} }`,
    `[data-theme="dark"] { ${colours('dark')} }`,
    `@media (prefers-color-scheme: dark) { :root:not([data-theme="light"], [data-theme="dark"]) { ${colours('dark')} } }`,
    ...runs,
  ].join('\n')
  document.head.append(sheet)
}
