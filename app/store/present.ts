/** The customer view as a place: opened from the bench, left to the bench, in full screen where the browser allows it. */
import { useView } from './view.ts'

/** Call it from a press: a browser gives the full screen to nothing else. */
export function openPresent() {
  useView.setState({ view: 'present', slide: 0, playing: false })
  fillScreen()
}

export function closePresent() {
  useView.setState({ view: 'bench', slide: 0, playing: false })
  if (document.fullscreenElement) document.exitFullscreen().catch(() => {})
}

export const canFillScreen = () => document.fullscreenEnabled === true

/** The whole page, so that dialogs are seen as well. Where it is refused the view fills the window. */
export function fillScreen() {
  if (canFillScreen()) document.documentElement.requestFullscreen().catch(() => {})
}
