/**
 * Measured logs that are open: how they are understood, how they lie over the model, and the fit. What a person says about them is part
 * of the history (`LogSettings`); the logs themselves stay in their worker until they are closed or the page is left, and nowhere else.
 */
import { create } from 'zustand'
import { keyOf, type LogState, NO_FIT, ownChoices } from './log-state.ts'
import { Talk } from './log-talk.ts'
import { type LogSettings, useScenario } from './scenario.ts'

const settings = () => useScenario.getState().logs
const change = (next: Partial<LogSettings>, gesture?: string) =>
  useScenario.getState().setLogs({ ...settings(), ...next }, gesture)

/** What a person says of logs stands beside the scenario. */
const SAID: Pick<LogState, 'choose' | 'setRate' | 'leaveOut' | 'setWish' | 'setResponse'> = {
  choose(id, place, choice) {
    const header = `#${place}`
    const before = ownChoices(settings(), id)
    const others = (before.columns ?? []).filter((each) => each.header !== header)
    const columns = choice ? [...others, { ...choice, header }] : others
    change({ choices: { ...settings().choices, [id]: { ...before, columns } } })
  },

  setRate(id, rate) {
    const { rate: _, ...before } = ownChoices(settings(), id)
    change({ choices: { ...settings().choices, [id]: rate === null ? before : { ...before, rate } } })
  },

  leaveOut(recording, out) {
    const others = settings().leftOut.filter((key) => key !== keyOf(recording))
    change({ leftOut: out ? [...others, keyOf(recording)] : others })
  },

  setWish: (wish, gesture) => change({ wish: { ...settings().wish, ...wish } }, gesture),

  setResponse: (wish) => change({ response: { ...settings().response, ...wish } }),
}

export const useLog = create<LogState>()((set, get) => {
  const talk = new Talk(set, get)
  useScenario.subscribe((now, before) => {
    if (now.logs.choices !== before.logs.choices || now.scenario.job !== before.scenario.job) talk.follow()
  })
  return {
    logs: [],
    laid: null,
    unlaid: null,
    fit: NO_FIT,
    responded: null,
    unresponded: null,
    ...SAID,
    open: (files) => talk.open(files),
    close: (id) => talk.close(id),
    respond: (scenario) => talk.respond(scenario),
    lay: (scenario) => talk.lay(scenario),
    startFit: (scenario) => talk.startFit(scenario),
    stopFit: () => talk.stopFit(),
  }
})
