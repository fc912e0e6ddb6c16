import { Suspense, useEffect } from 'react'
import { CautionLine } from './shell/Cautions.tsx'
import { FileDrop } from './shell/FileDrop.tsx'
import { Guard } from './shell/Guard.tsx'
import { Header } from './shell/Header.tsx'
import { Notice } from './shell/Notice.tsx'
import { RefusedFile } from './shell/RefusedFile.tsx'
import { useShortcuts } from './shell/shortcuts.ts'
import { useTheme } from './shell/theme.ts'
import { replaceView } from './store/address.ts'
import { useScenario } from './store/scenario.ts'
import { useView } from './store/view.ts'
import { VIEWS } from './views/index.ts'

export function App() {
  useTheme()
  useShortcuts()
  const chosen = useView((state) => state.view)
  const view = VIEWS.find((each) => each.id === chosen) ?? VIEWS[0]!
  const { id, Component, alone = false } = view
  const job = useScenario((state) => state.scenario.job)
  useEffect(() => {
    if (id !== chosen) replaceView(id) // an address may name a view that this version does not have
  }, [id, chosen])
  return (
    <FileDrop>
      <div className="app">
        <button type="button" className="skip" onClick={() => document.getElementById('view')?.focus()}>
          Skip to the bench
        </button>
        {!alone && <Header />}
        <Notice />
        <main id="view" tabIndex={-1}>
          <Guard key={`${chosen} ${job}`}>
            <Suspense fallback={<p role="status">Opening …</p>}>
              <Component />
            </Suspense>
          </Guard>
          <RefusedFile />
        </main>
        <CautionLine />
      </div>
    </FileDrop>
  )
}
