/**
 * Several things that run side by side and speak one after another: what speaks first is heard at once, what comes later is kept
 * until those before it have ended.
 * @param {(text: string) => void} say
 * @returns {() => { write: (text: string) => void, end: () => void }} the next speaker
 */
export function inTurn(say) {
  /** @type {{ kept: string[], ended: boolean }[]} */
  const speakers = []
  const go = () => {
    while (speakers[0]) {
      for (const text of speakers[0].kept.splice(0)) say(text)
      if (!speakers[0].ended) return
      speakers.shift()
    }
  }
  return () => {
    const speaker = { kept: /** @type {string[]} */ ([]), ended: false }
    speakers.push(speaker)
    const then = (/** @type {() => void} */ change) => {
      change()
      go()
    }
    return {
      write: (text) => then(() => speaker.kept.push(text)),
      end: () => then(() => Object.assign(speaker, { ended: true })),
    }
  }
}
