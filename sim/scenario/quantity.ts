/**
 * Builders of the scenario's schema. A quantity is a JSON Schema number that also carries what a person reads:
 * label (`title`), symbol, SI `unit`, the unit it is usually shown in, and one sentence on what it does to the grip.
 */
import Type from 'typebox'

export interface QuantityOptions {
  label: string
  symbol: string
  /** SI unit of the stored value; '' for a bare number. */
  unit: string
  /** Unit in which people usually read it, e.g. 'mm' for 'm'; the SI unit if left out. */
  shown?: string
  default?: number
  /** Allowed range, both ends included. */
  range: [number, number]
  /** Where it lies in most grippers and parts; common practice, no source. */
  usual?: [number, number]
  /** What it does to the grip, one sentence. */
  note: string
  integer?: boolean
}

export function quantity({ label, range, note, integer, ...rest }: QuantityOptions) {
  const options = { title: label, description: note, minimum: range[0], maximum: range[1], ...rest }
  return integer ? Type.Integer(options) : Type.Number(options)
}

/** A damage limit: a quantity that may be left out, which means "none". */
export const limit = (options: QuantityOptions) => optional(quantity(options))

/**
 * The same schema as a key that may be missing. `Type.Optional` says just this, but brings the library's whole engine of computed types
 * to every page that opens.
 */
export function optional<T extends Type.TSchema>(schema: T): Type.TOptional<T> {
  const same = Object.defineProperties({}, Object.getOwnPropertyDescriptors(schema))
  return Object.defineProperty(same, '~optional', { value: true }) as Type.TOptional<T>
}

/** A closed object whose keys all have defaults, so that it may be left out whole. */
export function group<const P extends Type.TProperties>(label: string, properties: P) {
  return Type.Object(properties, { title: label, default: {}, additionalProperties: false })
}

/** One of a few words; the first is the default. `labels` are what a person reads, in the same order. */
export function choice<const W extends readonly string[]>(
  label: string,
  words: W,
  labels: readonly string[],
  note: string,
) {
  return Type.Unsafe<W[number]>({
    type: 'string',
    enum: words,
    title: label,
    description: note,
    default: words[0],
    labels,
  })
}

/** What the interface and the documentation read from a quantity's schema. */
export interface QuantitySchema {
  type: 'number' | 'integer'
  title: string
  symbol: string
  unit: string
  shown?: string
  default?: number
  minimum: number
  maximum: number
  usual?: [number, number]
  description: string
}

export interface ChoiceSchema {
  title: string
  enum: string[]
  labels: string[]
  default: string
  description: string
}
