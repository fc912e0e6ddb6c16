import { useState } from 'react'
import { studyWords } from '../../../../sim/index.ts'
import { windowWords } from '../../../read/result/windowWords.ts'
import { download, fileName } from '../../../store/file.ts'
import { type RunView, useResults } from '../../../store/results.ts'
import { useScenario } from '../../../store/scenario.ts'
import { useView } from '../../../store/view.ts'
import { Button } from '../../../ui/Button.tsx'
import { Dialog } from '../../../ui/Dialog.tsx'
import { flatLens, type TimeLens } from '../../../ui/timeLens.ts'
import { ClipDialog } from './ClipDialog.tsx'
import { CLIP } from './encode.ts'
import { photographer, type Subject } from './frames.tsx'

/** The play as files to hand out: one picture of the present instant, or all of it as a video. */
export function ClipMaker({ runs, lens }: { runs: RunView[]; lens: TimeLens }) {
  const [open, setOpen] = useState(false)
  const ready = runs.length > 0 && runs.every(({ status }) => status !== 'running')
  const job = useScenario((state) => state.scenario.job)
  const show = () => {
    useView.getState().set({ playing: false })
    setOpen(true)
  }
  return (
    <>
      <Button disabled={!ready} onClick={() => saveStill(subjectOf(runs, lens))}>
        Still
      </Button>
      <Button disabled={!ready} onClick={show}>
        Clip
      </Button>
      <section className="present-dialogs">
        <Dialog open={open} title={`Clip of this ${studyWords(job).run}`} onClose={() => setOpen(false)}>
          {open && ready && (
            <ClipDialog subject={subjectOf(runs, lens)} onStill={() => saveStill(subjectOf(runs, lens))} />
          )}
        </Dialog>
      </section>
    </>
  )
}

function subjectOf(runs: RunView[], lens: TimeLens): Subject {
  const { units } = useView.getState()
  const { scenario } = runs[0]!
  return {
    runs,
    lens,
    axis: flatLens(scenario.run.duration),
    units,
    scenario,
    title: scenario.name,
    span: windowWords(scenario, units).span,
  }
}

/** Image pixels of a still for each of a clip. */
const FINE = 2

async function saveStill(subject: Subject) {
  const photo = await photographer(subject, CLIP, FINE)
  try {
    await photo.draw(Math.min(useView.getState().time, subject.scenario.run.duration))
    const blob = await new Promise<Blob | null>((done) => photo.canvas.toBlob(done, 'image/png'))
    if (!blob) throw new Error('no image')
    download(blob, `${fileName(subject.title)}-still.png`)
  } catch {
    useResults.getState().say('The browser could not make the image.')
  } finally {
    photo.end()
  }
}
