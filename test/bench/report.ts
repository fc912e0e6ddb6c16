/** Lines that the benchmarks print. */
import { least, median, spread } from './stats.ts'

export const row = (label: string, value: string) => console.log(`  ${label.padEnd(44)} ${value}`)

/** A figure with its goal, met or missed. */
export const goal = (label: string, value: string, bound: string, met: boolean) =>
  row(label, `${value}   goal ${bound}: ${met ? 'met' : 'MISSED'}`)

export const summary = (values: readonly number[], digits: number) =>
  `least ${least(values).toFixed(digits)}, median ${median(values).toFixed(digits)} ± ${spread(values).toFixed(digits)}`
