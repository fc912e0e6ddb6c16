/** The compiled core, as the page's workers run it. */
import base64 from 'virtual:core'
import { compiledCore } from '../../sim/index.ts'

const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))
const module = new WebAssembly.Module(bytes)

/** A core of its own; one bench at a time runs on it. */
export const newCore = () => compiledCore(new WebAssembly.Instance(module).exports)
