import { useEffect, useRef, useState } from 'react'
import { ALL_PRESETS } from '../../sim/index.ts'
import { fetchDrawings } from '../picture/families/registry.ts'
import { addressOf, keepAddress } from '../store/address.ts'
import { saveScenario } from '../store/file.ts'
import { fetchOthers, useOthers } from '../store/others.ts'
import { fetchPacking } from '../store/packing.ts'
import { useResults } from '../store/results.ts'
import { useScenario } from '../store/scenario.ts'
import { useView } from '../store/view.ts'
import { Button } from '../ui/Button.tsx'
import { Choice } from '../ui/Choice.tsx'
import { Menu } from '../ui/Menu.tsx'
import { useNarrow } from '../ui/useNarrow.ts'
import { VIEWS } from '../views/index.ts'
import { exportItems } from './export/items.ts'
import { openFile } from './openFile.ts'

/** What stands over every view: which part is on which axis, and what can be done with the whole of it. */
export function Header() {
  const name = useScenario((state) => state.scenario.name)
  return (
    <header className="top">
      <p className="product">Jawbench</p>
      <p className="scenario-name" title={name}>
        {name}
      </p>
      <Navigation />
      {useNarrow() ? <FoldedTools /> : <Tools />}
    </header>
  )
}

function Tools() {
  return (
    <div className="tools" id="tools">
      <Scenarios />
      <History />
      <Looks />
    </div>
  )
}

/** On a narrow page the tools are out of the way until they are wanted. */
function FoldedTools() {
  const [open, setOpen] = useState(false)
  return (
    <>
      <Button aria-expanded={open} aria-controls={open ? 'tools' : undefined} onClick={() => setOpen(!open)}>
        Job and units
      </Button>
      {open && <Tools />}
    </>
  )
}

function Navigation() {
  const chosen = useView((state) => state.view)
  const nav = useRef<HTMLElement>(null)
  useEffect(() => {
    if (chosen) nav.current?.querySelector('[aria-current]')?.scrollIntoView({ block: 'nearest', inline: 'nearest' })
  }, [chosen])
  const listed = VIEWS.filter(({ alone, unlisted }) => !alone && !unlisted)
  if (listed.length < 2) return null
  return (
    <nav ref={nav} aria-label="Views">
      {listed.map(({ id, label }) => (
        <Button
          key={id}
          quiet
          aria-current={id === chosen ? 'page' : undefined}
          onClick={() => useView.setState({ view: id })}
        >
          {label}
        </Button>
      ))}
    </nav>
  )
}

/** Where they cannot be fetched, the presets that are here are listed. */
const fetchAll = () => void Promise.allSettled([fetchOthers(), fetchDrawings()])

function Scenarios() {
  const picker = useRef<HTMLInputElement>(null)
  useOthers()
  const presets = ALL_PRESETS.map(({ title, summary, scenario }) => ({
    label: title,
    detail: summary,
    act: () => useScenario.getState().load(scenario),
  }))
  return (
    <div className="tool-group">
      <Button onClick={() => useView.setState({ view: 'new-job' })}>New job</Button>
      <Menu label="Presets" items={presets} soon={fetchAll} />
      <Button onClick={() => picker.current?.click()}>Open</Button>
      <input
        ref={picker}
        type="file"
        accept=".json,application/json"
        hidden
        onChange={({ target }) => {
          const file = target.files?.[0]
          target.value = '' // so that the same file can be picked again
          if (file) openFile(file)
        }}
      />
      <Button onClick={() => saveScenario(useScenario.getState().scenario)}>Save</Button>
      <Button onPointerEnter={soonShared} onFocus={soonShared} onClick={share}>
        Share
      </Button>
      <Menu label="Export" items={exportItems()} />
    </div>
  )
}

/** Some browsers let a press write into the clipboard only if nothing is waited for in between. */
const soonShared = () => void fetchPacking().catch(() => {})

/** The link goes to the clipboard; where that is refused it is in the address bar all the same. */
async function share() {
  const { say } = useResults.getState()
  const address = await addressOf(useScenario.getState()).catch(() => null)
  if (address === null) return say('What makes links could not be fetched; save the scenario as a file instead.')
  keepAddress()
  try {
    await navigator.clipboard.writeText(address)
    say('The link to this scenario is in the clipboard; nothing is stored anywhere else.')
  } catch {
    say('The address of this page is the link to this scenario: copy it from the address bar.')
  }
}

function History() {
  const { canUndo, canRedo, undo, redo } = useScenario()
  return (
    <div className="tool-group">
      <Button disabled={!canUndo} aria-keyshortcuts="Control+Z" onClick={undo}>
        Undo
      </Button>
      <Button disabled={!canRedo} aria-keyshortcuts="Control+Shift+Z" onClick={redo}>
        Redo
      </Button>
    </div>
  )
}

const UNITS = [
  { value: 'si', label: 'SI' },
  { value: 'us', label: 'US' },
] as const

const THEMES = [
  { value: 'system', label: 'Auto' },
  { value: 'light', label: 'Light' },
  { value: 'dark', label: 'Dark' },
] as const

function Looks() {
  const { units, theme, set } = useView()
  return (
    <div className="tool-group">
      <Choice bare label="Units" options={UNITS} value={units} onChoose={(value) => set({ units: value })} />
      <Choice bare label="Theme" options={THEMES} value={theme} onChoose={(value) => set({ theme: value })} />
    </div>
  )
}
