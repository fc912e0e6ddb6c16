/** The live plant's side of the door: simulates on as far as its budget of real time allows, and does what it is told. */
import '../../sim/others.ts'
import { LivePlant } from '../../sim/index.ts'
import { newCore } from './core.ts'
import type { LiveAnswer, LiveRequest } from './live-messages.ts'

declare const self: DedicatedWorkerGlobalScope

/** Simulated time between two looks at the clock [s]. */
const SLICE = 0.01

const answer = (message: LiveAnswer, transfer: Transferable[] = []) => self.postMessage(message, transfer)

let plant: LivePlant | null = null

self.onmessage = ({ data }: MessageEvent<LiveRequest>) => {
  try {
    if (data.kind === 'start') plant = new LivePlant(data.scenario, data.strategy, newCore())
    else if (plant) obey(plant, data)
  } catch (error) {
    answer({ kind: 'refused', message: error instanceof Error ? error.message : String(error) })
  }
}

function obey(plant: LivePlant, request: Exclude<LiveRequest, { kind: 'start' }>) {
  switch (request.kind) {
    case 'change':
      return plant.change(request.scenario)
    case 'strategy':
      return plant.changeStrategy(request.strategy)
    case 'act':
      plant.act(request.act)
      return
    case 'advance':
      return advance(plant, request.seconds, request.budget)
  }
}

function advance(plant: LivePlant, seconds: number, budget: number) {
  const until = performance.now() + budget
  const pieces: Float64Array[][] = [plant.advance(0)]
  let left = seconds
  while (left > 0 && (pieces.length === 1 || performance.now() < until)) {
    const slice = Math.min(left, SLICE)
    pieces.push(plant.advance(slice))
    left -= slice
  }
  const columns = joined(pieces)
  answer(
    { kind: 'piece', columns, state: plant.state, seconds: seconds - left },
    columns.map((column) => column.buffer as ArrayBuffer),
  )
}

function joined(pieces: Float64Array[][]): Float64Array[] {
  const rows = pieces.reduce((sum, piece) => sum + piece[0]!.length, 0)
  return pieces[0]!.map((_, c) => {
    const column = new Float64Array(rows)
    let row = 0
    for (const piece of pieces) {
      column.set(piece[c]!, row)
      row += piece[c]!.length
    }
    return column
  })
}
