/** What is wrong with a value of a file, and how that is said. */

export interface Fault {
  /** Path of the key, e.g. `arm.moves[0].start`; '' for the file as a whole. */
  path: string
  given: string
  allowed: string
}

/** One line for a fault, as the command line and the page print it. */
export const faultLine = (fault: Fault) => `${fault.path || 'the file'}: given ${fault.given}, allowed ${fault.allowed}`

/** Thrown where what is asked cannot be done with the scenario. */
export class Refusal extends RangeError {
  readonly fault: Fault

  constructor(fault: Fault) {
    super(faultLine(fault))
    this.fault = fault
  }
}

/** What may stand in a schema of a file and say something of a value. */
export interface Node {
  type?: string
  const?: unknown
  enum?: unknown[]
  anyOf?: Node[]
  default?: unknown
  minimum?: number
  maximum?: number
  minLength?: number
  maxLength?: number
  minItems?: number
  maxItems?: number
  items?: Node
  properties?: Record<string, Node>
  unit?: string
  allowed?: string
}

export const UNKNOWN = 'an unknown key'

/** What a schema allows, as it is told; one may say so itself, in `allowed`. */
export function allowedBy(node: Node): string {
  if (typeof node.allowed === 'string') return node.allowed
  if (node.anyOf) return node.anyOf.map(allowedBy).join(' or ')
  if (node.const !== undefined) return show(node.const)
  if (node.enum) return node.enum.map(show).join(', ')
  if (node.type === 'null') return 'null'
  if (node.type === 'boolean') return 'true or false'
  if (node.type === 'number' || node.type === 'integer') {
    const kind = node.type === 'integer' ? 'a whole number' : 'a number'
    return `${kind} from ${node.minimum} to ${node.maximum}${node.unit ? ` ${node.unit}` : ''}`
  }
  const size = (least: unknown, most: unknown) => (least ? `${least} to ${most}` : `at most ${most}`)
  if (node.type === 'string') return `a text of ${size(node.minLength, node.maxLength)} characters`
  if (node.type === 'array') return `a list of ${size(node.minItems, node.maxItems)} entries`
  return `an object with ${Object.keys(node.properties ?? {}).join(', ')}`
}

/** A value as a person would read it in a message, cut to a length that fits one. */
export function show(value: unknown): string {
  if (value === undefined) return 'nothing'
  if (typeof value === 'number') return String(value)
  if (Array.isArray(value)) return `a list of ${value.length}`
  const text = JSON.stringify(value)
  return text.length > 60 ? `${text.slice(0, 57)}…` : text
}
