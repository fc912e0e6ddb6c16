import { type DragEvent, type ReactNode, useState } from 'react'
import { openFile } from './openFile.ts'

/** A scenario file may be dropped anywhere on the page. */
export function FileDrop({ children }: { children: ReactNode }) {
  const [over, setOver] = useState(false)
  const hasFiles = (event: DragEvent) => event.dataTransfer.types.includes('Files')
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is a shortcut; the Open button does the same by keyboard
    <div
      className="file-drop"
      onDragOver={(event) => {
        if (!hasFiles(event)) return
        event.preventDefault()
        setOver(true)
      }}
      onDragLeave={(event) => {
        if (event.relatedTarget === null) setOver(false)
      }}
      onDrop={(event) => {
        if (!hasFiles(event)) return
        event.preventDefault()
        setOver(false)
        const file = event.dataTransfer.files[0]
        if (file) openFile(file)
      }}
    >
      {children}
      {over && <p className="drop-here">Drop the scenario file to open it</p>}
    </div>
  )
}
