import { useState } from 'react'
import type { JobId } from '../../sim/index.ts'
import { useScenario } from '../store/scenario.ts'
import { Button } from '../ui/Button.tsx'
import { Dialog } from '../ui/Dialog.tsx'

const CAUTIONS: Record<JobId, string> = {
  grip: 'Grippers pinch, may start unexpectedly and may lose the part when power fails.',
  press: 'Presses crush, may start unexpectedly, and keep the energy of their bent frame.',
  web: 'Running rolls draw in hands at the nip, may start unexpectedly, and run on when the web breaks.',
  cap: 'Turning heads wind up hair, sleeves and gloves, and may start unexpectedly.',
}

/** Always in sight: what a gripper can do to a hand, and what this bench is not. */
export function CautionLine() {
  const [open, setOpen] = useState(false)
  const job = useScenario((state) => state.scenario.job)
  return (
    <footer className="caution-line">
      <p>
        <strong>Caution</strong> {CAUTIONS[job]} This bench is no safety function.
      </p>
      <Button quiet onClick={() => setOpen(true)}>
        All cautions
      </Button>
      {import.meta.env.PROD && (
        <a href="./notices.html" target="_blank" rel="noopener">
          Licences
        </a>
      )}
      {/* In a section, because the dialog's own header would otherwise count as the page's. */}
      <section>
        <Dialog open={open} title="Cautions" onClose={() => setOpen(false)}>
          <CautionText />
        </Dialog>
      </section>
    </footer>
  )
}

function CautionText() {
  return (
    <div className="prose">
      <h3>Pinch forces</h3>
      <p>
        An electric gripper can crush fingers, also at forces that spare the part. Peaks at contact may be many times
        the set force. Keep hands out of the jaws whenever the drive can move.
      </p>
      <h3>Loss of power</h3>
      <p>
        When power fails, an axis that can be pushed back lets go of its part, and one with a self-locking thread keeps
        pinching. Decide for each axis which of the two is safe, and try it with a part that may fall.
      </p>
      <h3>Presses</h3>
      <p>
        A ram crushes whatever is under it, at any force that seats a bushing. Frame and ram store energy while they
        press: part, punch or a bushing that jams can spring out when they let go. Guard the point of operation, keep
        hands out, and let the force down before reaching in.
      </p>
      <h3>Turning heads</h3>
      <p>
        A spindle winds up hair, sleeves, gloves and cloths at any speed, and a chuck catches fingers against the jar.
        Under a head that follows the thread down there is no room for a hand. Glass may break at a torque that a
        plastic lid bears. Guard the head, tie up and take off what can be caught, and let it stand before reaching in.
      </p>
      <h3>Running webs</h3>
      <p>
        Where a web meets a roll, and where two rolls meet, hands, hair and cloths are drawn in faster than anybody lets
        go, and a thin web cuts. A web that breaks lets its roll run on and its ends whip; a large roll keeps turning
        long after the power is gone. Guard the nips, thread at crawling speed with hold-to-run control, and let every
        roll stand before reaching in.
      </p>
      <h3>Unexpected start</h3>
      <p>
        A drive may move when power returns, when a parameter is written, or when a threshold trips. Isolate and secure
        it against restart before reaching in.
      </p>
      <h3>What this bench is not</h3>
      <p>
        It is a simulation: no measurement, no safety function, no proof. Numbers hold as far as the model and its
        inputs do. Try settings on the real axis at low force and speed first.
      </p>
      <p>
        The risk assessment of your machine, local codes, the standards in force and the judgement of licensed
        practitioners decide; where they say something else, they are right.
      </p>
    </div>
  )
}
