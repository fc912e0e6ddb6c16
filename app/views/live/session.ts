/** Keeps the live plant going: asks its worker for as much time as has passed, frame by frame, and hands on what comes. */
import { CUT, jobOf, jobWords, type LiveState, RESTORE, type Scenario, strategiesOn } from '../../../sim/index.ts'
import { type LiveMark, SPAN, useLive } from '../../store/live.ts'
import { useScenario } from '../../store/scenario.ts'
import { LiveClient } from '../../worker/live.ts'
import type { LivePiece } from '../../worker/live-messages.ts'
import { pauseToLook } from './back.ts'
import { BACK, happenings, LiveHistory } from './history.ts'

/** Real time for which a frame may ask at most [ms]: what a stalled page has missed is not caught up. */
const LONGEST = 50
/** Real time that the worker may spend on a piece [ms]; what it does not reach in it is not caught up either. */
const BUDGET = 12
/** Time between two readings of the figures [ms]. */
const READING = 250

/** Marks of what every plant knows. */
const POWER: Readonly<Record<string, string>> = { [CUT]: 'power off', [RESTORE]: 'power on' }

export class LiveSession {
  private client: LiveClient
  private readonly history: LiveHistory
  private scenario: Scenario
  /** The scenario has changed since the plant was told. */
  private changed = false
  /** The piece on its way is one of the plant before. */
  private stale = false
  private latest: LiveState | null = null
  /** The plant at the piece before. */
  private before: LiveState | null = null
  /** Real time not asked for yet, and when the last frame was [ms]. */
  private owed = 0
  private last = 0
  /** When the figures were last read [ms], and simulated since [s]. */
  private readAt = 0
  private done = 0
  private frame = 0
  private readonly ends: (() => void)[]

  constructor() {
    this.scenario = useScenario.getState().scenario
    this.history = new LiveHistory(this.scenario)
    this.chooseStrategy()
    this.client = this.connect()
    this.startAnew()
    this.ends = [
      useScenario.subscribe((now, before) => {
        // The view of another job has a session of its own.
        if (now.scenario === before.scenario || now.scenario.job !== this.scenario.job) return
        this.scenario = now.scenario
        if (!this.changed) this.mark('changed')
        this.changed = true
        if (now.base !== before.base) this.startAnew()
      }),
      useLive.subscribe((now, before) => {
        if (now.strategy !== before.strategy) {
          this.client.send({ kind: 'strategy', strategy: now.strategy })
          this.mark('strategy')
        }
        if (now.strategy !== before.strategy || now.speed !== before.speed) this.client.advance(0, BUDGET)
        if (now.running && !before.running) useLive.setState({ cursor: null })
      }),
    ]
    this.ends.push(pauseToLook())
    this.frame = requestAnimationFrame(this.tick)
  }

  /** At rest, with new work, everything cold. */
  readonly startAnew = () => {
    this.changed = false
    this.stale = this.client.busy
    this.history.clear()
    this.before = null
    useLive.setState({ refusal: null, cursor: null, marks: [], oldest: 0, look: this.history.look })
    this.client.send({ kind: 'start', scenario: this.scenario, strategy: useLive.getState().strategy })
    this.client.advance(0, BUDGET)
  }

  /** A plant that was paused goes on, so that it is seen what the button does. */
  act(act: string) {
    this.client.send({ kind: 'act', act })
    this.mark(POWER[act] ?? jobWords(this.scenario).live.acts[act]!.mark)
    useLive.setState({ running: true })
  }

  /** One that makes sense on the job. */
  private chooseStrategy() {
    const ids = strategiesOn(jobOf(this.scenario)).map(({ id }) => id)
    if (!ids.includes(useLive.getState().strategy)) useLive.setState({ strategy: ids.at(-1)! })
  }

  close() {
    cancelAnimationFrame(this.frame)
    for (const end of this.ends) end()
    this.client.close()
    useLive.setState({ now: null, read: null, cursor: null, look: null, marks: [] })
  }

  private connect() {
    return new LiveClient({
      piece: (piece) => this.take(piece),
      refused: (refusal) => useLive.setState({ refusal }),
      lost: () => {
        this.client = this.connect()
        this.startAnew()
      },
    })
  }

  private readonly tick = (now: number) => {
    this.frame = requestAnimationFrame(this.tick)
    const { running, speed } = useLive.getState()
    const passed = this.last === 0 ? 0 : now - this.last
    this.last = now
    if (this.changed) {
      this.changed = false
      useLive.setState({ refusal: null })
      this.client.send({ kind: 'change', scenario: this.scenario })
    }
    if (!running) return
    this.owed = Math.min(this.owed + passed, LONGEST)
    if (this.client.busy || this.owed === 0) return
    this.client.advance((this.owed / 1000) * speed, BUDGET)
    this.owed = 0
  }

  private take({ columns, state, seconds }: LivePiece) {
    if (this.stale) {
      this.stale = false
      this.client.advance(0, BUDGET)
      return
    }
    const { speed, running } = useLive.getState()
    this.history.append(columns, state.now)
    this.keep(happenings(this.scenario, this.before, state))
    this.before = state
    this.done += seconds
    const traces = this.history.look(state.time - SPAN * speed)
    const since = performance.now() - this.readAt
    if (since < READING && running && this.readable(state)) return useLive.setState({ now: { state, traces } })
    const pace = running && since < 2 * READING ? this.done / ((since / 1000) * speed) : 1
    this.readAt += since
    this.done = 0
    this.latest = state
    useLive.setState({ now: { state, traces }, read: state, pace, oldest: this.history.oldest })
  }

  /** Something that a person did, at the newest sample. */
  private mark(label: string) {
    if (this.before) this.keep([{ time: this.before.time, label, damage: false }])
  }

  /** Marks as far back as one can look. */
  private keep(fresh: LiveMark[]) {
    if (fresh.length === 0) return
    const { marks } = useLive.getState()
    const since = fresh[0]!.time - BACK
    useLive.setState({ marks: [...marks.filter(({ time }) => time >= since), ...fresh] })
  }

  /** Whether the last reading still says what the plant does. */
  private readable({ phase, powered, able, events, facts }: LiveState): boolean {
    const { latest } = this
    return (
      latest !== null &&
      latest.phase === phase &&
      latest.powered === powered &&
      latest.able.join() === able.join() &&
      Object.keys(events).every((id) => (events[id] === null) === (latest.events[id] === null)) &&
      Object.keys(facts).every((id) => facts[id] === latest.facts[id])
    )
  }
}
