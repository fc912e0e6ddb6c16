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
  private seen: ArrayBuffer
  private doubles: Float64Array<ArrayBuffer>
  private words: Uint32Array<ArrayBuffer>

  constructor(memory: { buffer: ArrayBuffer }, reserve: (length: number) => number) {
    this.memory = memory
    this.reserve = reserve
    this.seen = memory.buffer
    this.doubles = new Float64Array(this.seen)
    this.words = new Uint32Array(this.seen)
  }

  /** Writes every number and array of a tree into its counterpart at `address`. */
  write(block: Block, address: number): void {
    this.look()
    const fields = block as Fields
    const { numbers, blocks, arrays } = placesOf(block)
    for (const { name, at } of numbers) this.doubles[(address + at) >>> 3] = fields[name] as number
    for (const { name, at } of arrays) this.writeNumbers(fields[name] as Float64Array, address + at)
    for (const { name, at } of blocks) this.write(fields[name] as Block, this.words[(address + at) >>> 2]!)
  }

  /** Reads every number of a tree back, and copies of its arrays where they are wanted. */
  read(block: Block, address: number, copies: boolean): void {
    this.look()
    const fields = block as Fields
    const { numbers, blocks, arrays } = placesOf(block)
    for (const { name, at } of numbers) fields[name] = this.doubles[(address + at) >>> 3]
    for (const { name, at } of blocks) this.read(fields[name] as Block, this.words[(address + at) >>> 2]!, copies)
    if (copies) for (const { name, at } of arrays) fields[name] = this.array(this.words[(address + at) >>> 2]!).slice()
  }

  /** The array in a field, named by the fields on the way to it from the root of a tree at `address`, where it lies. */
  numbers(block: Block, address: number, [name, ...further]: string[]): Float64Array<ArrayBuffer> {
    this.look()
    const { blocks, arrays } = placesOf(block)
    const at = [...blocks, ...arrays].find((place) => place.name === name)?.at
    if (at === undefined) return new Float64Array(0)
    const place = this.words[(address + at) >>> 2]!
    const value = (block as Fields)[name!]
    return value instanceof Block ? this.numbers(value, place, further) : this.array(place)
  }

  /** The array at a place, where it lies. */
  private array(place: number): Float64Array<ArrayBuffer> {
    return new Float64Array(this.seen, place, this.words[(place - SIZE) >>> 2]! / 8)
  }

  private writeNumbers(values: Float64Array, at: number): void {
    if (values.length === 0) return
    let place = this.words[at >>> 2]!
    if (this.words[(place - SIZE) >>> 2] !== values.byteLength) {
      place = this.reserve(values.length)
      this.look()
      this.words[at >>> 2] = place
    }
    this.doubles.set(values, place >>> 3)
  }

  /** Memory that has grown has a buffer of its own. */
  private look(): void {
    if (this.seen === this.memory.buffer) return
    this.seen = this.memory.buffer
    this.doubles = new Float64Array(this.seen)
    this.words = new Uint32Array(this.seen)
  }
}

/** Bytes from the start of a block, which lies at a multiple of 8, to one of its fields. */
interface Place {
  name: string
  at: number
}

interface Places {
  numbers: Place[]
  arrays: Place[]
  blocks: Place[]
}

/** Laid out once for every class. */
const PLACES = new WeakMap<object, Places>()

function placesOf(block: Block): Places {
  const known = PLACES.get(block.constructor)
  if (known) return known
  const places: Places = { numbers: [], arrays: [], blocks: [] }
  let end = 0
  for (const [name, value] of Object.entries(block)) {
    const size = typeof value === 'number' ? 8 : 4
    const at = Math.ceil(end / size) * size
    end = at + size
    const kind = typeof value === 'number' ? 'numbers' : value instanceof Block ? 'blocks' : 'arrays'
    places[kind].push({ name, at })
  }
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
