/**
 * Lays a tree of blocks over the memory of the compiled core, and reads it back. The compiler places the fields of a class in the
 * order of their declaration, each at a multiple of its size: an `f64` takes 8 bytes, a reference 4. The tree in TypeScript, made by
 * the same lines, says which is which.
 */
import { Block, State } from '../core/block.ts'

type Fields = Record<string, unknown>

/** Bytes before an object at which its size in bytes is kept. */
const SIZE = 4

/** The memory of a compiled core; `reserve` makes room for so many numbers and returns its address. */
export class Memory {
  private readonly memory: { buffer: ArrayBuffer }
  private readonly reserve: (length: number) => number
  private seen: DataView

  constructor(memory: { buffer: ArrayBuffer }, reserve: (length: number) => number) {
    this.memory = memory
    this.reserve = reserve
    this.seen = new DataView(memory.buffer)
  }

  /** Writes every number and array of a tree into its counterpart at `address`. */
  write(block: Block, address: number): void {
    eachField(block, address, (value, at) => {
      if (typeof value === 'number') this.view.setFloat64(at, value, true)
      else if (value instanceof Float64Array) this.writeNumbers(value, at)
      else if (value instanceof Block) this.write(value, this.view.getUint32(at, true))
    })
  }

  /** Reads every number of a tree back, and copies of its arrays where they are wanted. */
  read(block: Block, address: number, arrays: boolean): void {
    eachField(block, address, (value, at, name) => {
      if (typeof value === 'number') (block as Fields)[name] = this.view.getFloat64(at, true)
      else if (value instanceof Block) this.read(value, this.view.getUint32(at, true), arrays)
      else if (arrays) (block as Fields)[name] = this.array(this.view.getUint32(at, true)).slice()
    })
  }

  /** The array in a field, named by the fields on the way to it from the root of a tree at `address`, where it lies. */
  numbers(block: Block, address: number, [name, ...further]: string[]): Float64Array<ArrayBuffer> {
    let found = new Float64Array(0)
    eachField(block, address, (value, at, field) => {
      if (field !== name) return
      const place = this.view.getUint32(at, true)
      found = value instanceof Block ? this.numbers(value, place, further) : this.array(place)
    })
    return found
  }

  /** The array at a place, where it lies. */
  private array(place: number): Float64Array<ArrayBuffer> {
    return new Float64Array(this.view.buffer as ArrayBuffer, place, this.view.getUint32(place - SIZE, true) / 8)
  }

  private writeNumbers(values: Float64Array, at: number): void {
    if (values.length === 0) return
    let place = this.view.getUint32(at, true)
    if (this.view.getUint32(place - SIZE, true) !== values.byteLength) {
      place = this.reserve(values.length)
      this.view.setUint32(at, place, true)
    }
    new Float64Array(this.view.buffer as ArrayBuffer, place, values.length).set(values)
  }

  /** Memory that has grown has a buffer of its own. */
  private get view(): DataView {
    if (this.seen.buffer !== this.memory.buffer) this.seen = new DataView(this.memory.buffer)
    return this.seen
  }
}

/** The fields of one block with the place of each in memory. */
function eachField(block: Block, address: number, visit: (value: unknown, at: number, name: string) => void): void {
  const fields = block as Fields
  for (const { name, at } of placesOf(block)) visit(fields[name], address + at, name)
}

interface Place {
  name: string
  /** Bytes from the start of the block, which lies at a multiple of 8. */
  at: number
}

/** Laid out once for every class. */
const PLACES = new WeakMap<object, Place[]>()

function placesOf(block: Block): Place[] {
  const known = PLACES.get(block.constructor)
  if (known) return known
  let end = 0
  const places = Object.entries(block).map(([name, value]) => {
    const size = typeof value === 'number' ? 8 : 4
    const at = Math.ceil(end / size) * size
    end = at + size
    return { name, at }
  })
  PLACES.set(block.constructor, places)
  return places
}

/** Copies every number and array of one tree to another of the same shape. */
export function copyBlock(from: Block, to: Block): void {
  const target = to as Fields
  for (const [name, value] of Object.entries(from)) {
    if (typeof value === 'number') target[name] = value
    else if (value instanceof Float64Array) target[name] = value.slice()
    else if (value instanceof Block) copyBlock(value, target[name] as Block)
  }
}

/** Copies what moves, and nothing else, wherever both trees have a block of the same class. */
export function copyState(from: Block, to: Block): void {
  const target = to as Fields
  for (const [name, value] of Object.entries(from)) {
    const other = target[name]
    if (!(value instanceof Block && other instanceof Block && value.constructor === other.constructor)) continue
    if (value instanceof State) Object.assign(other, value)
    else copyState(value, other)
  }
}
