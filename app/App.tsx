import { CautionLine } from './shell/Cautions.tsx'
import { FileDrop } from './shell/FileDrop.tsx'
import { Header } from './shell/Header.tsx'
import { Notice } from './shell/Notice.tsx'
import { useShortcuts } from './shell/shortcuts.ts'
import { useTheme } from './shell/theme.ts'
import { useView } from './store/view.ts'
import { VIEWS } from './views/index.ts'
import './shell/shell.css'

export function App() {
  useTheme()
  useShortcuts()
  const chosen = useView((state) => state.view)
  const { Component } = VIEWS.find((view) => view.id === chosen) ?? VIEWS[0]!
  return (
    <FileDrop>
      <div className="app">
        <a className="skip" href="#view" onClick={skip}>
          Skip to the bench
        </a>
        <Header />
        <Notice />
        <main id="view" tabIndex={-1}>
          <Component />
        </main>
        <CautionLine />
      </div>
    </FileDrop>
  )
}

/** The address holds the scenario, so the link must not write into it. */
function skip(event: React.MouseEvent) {
  event.preventDefault()
  document.getElementById('view')?.focus()
}
