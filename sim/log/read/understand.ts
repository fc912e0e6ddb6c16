/** What the numbers of a log mean: its columns, its clocks and its recordings. */
import { clocksOf, type Group } from './clock.ts'
import type { LogFault, LogRemark } from './facts.ts'
import { choiceFaults, type Guessed, guessColumns, nameOf } from './guess.ts'
import type { Choices, Log, Recording } from './log.ts'
import { areAlike, columnOf, merged, recordingOf, timesOf } from './recordings.ts'
import { countsInDisguise, remarksOn, tableRemarks } from './remarks.ts'
import { type Segment, segmentsByRate, segmentsByStamps } from './segments.ts'
import { statsOf } from './stats.ts'
import { Skips, type Table } from './table.ts'

/** The same table may be asked again with other choices. */
export function understand(table: Table, choices: Choices = {}): Log {
  if (table.fault) return nothing(table, [table.fault])
  const wrong = choiceFaults(choices, table.columns)
  if (wrong.length > 0) return nothing(table, wrong)
  const stats = table.columns.map(({ values }) => statsOf(values))
  const guesses = guessColumns(table.columns, stats, choices.columns ?? [], choices.turning)
  countsInDisguise(guesses)
  const clocks = clocksOf(table, guesses, choices)
  const sets = setsOf(table, clocks.groups, choices, stats)
  const faults = [...askedFaults(guesses), ...clocks.faults]
  const skips = new Skips(table.skipped, table.skippedMore)
  const { recordings, fault, remarks } = recordingsOf(table, sets, skips)
  const log: Log = {
    ...nothing(table, [...faults, ...(fault ? [fault] : [])]),
    skipped: skips.inOrder(),
    skippedMore: skips.more,
    clock: clocks.groups[0]?.clock ?? null,
    columns: guesses.filter(isShown).map(columnOf),
  }
  if (log.faults.length > 0) return { ...log, remarks: tableRemarks(table) }
  if (recordings.length === 0) return { ...log, faults: [{ kind: 'no-rows' }], remarks: tableRemarks(table) }
  const all = [...clocks.remarks, ...remarks, ...remarksOn(table, stats, recordings)]
  // What the slope says of the time, it says of the scales as well: once is enough.
  const contradicted = all.some(({ kind }) => kind === 'time-contradicted')
  return { ...log, recordings, remarks: all.filter(({ kind }) => kind !== 'unlike' || !contradicted) }
}

const nothing = ({ layout, skipped, skippedMore }: Table, faults: LogFault[]): Log => ({
  faults,
  recordings: [],
  remarks: [],
  skipped,
  skippedMore,
  layout,
  clock: null,
  columns: [],
})

/** A column without name, unit and figures is what a separator at the end of the rows leaves. */
const isShown = ({ raw, stats }: Guessed) => raw.name !== '' || raw.unit !== '' || !Number.isNaN(stats.least)

/** What a person asks for must be there. */
function askedFaults(guesses: readonly Guessed[]): LogFault[] {
  return guesses.flatMap(({ choice, channel, stats, header, place, raw }): LogFault[] => {
    if (!choice || channel === null) return []
    const asked = { channel, header: nameOf({ header, place }) }
    if (raw.wordy && !raw.stamps && channel !== 'flag' && channel !== 'recording') return [{ kind: 'wordy', ...asked }]
    if (Number.isNaN(stats.least)) return [{ kind: 'valueless', ...asked }]
    return stats.least === stats.most ? [{ kind: 'constant', ...asked, value: stats.least }] : []
  })
}

/** Groups that make up recordings together, and whether they are parts of the same ones. */
interface Together {
  groups: Group[]
}

/** Recordings that stand side by side hold the same channels, each under its own clock; so each is understood for itself. */
function setsOf(
  table: Table,
  groups: readonly Group[],
  { columns = [], turning }: Choices,
  stats: readonly ReturnType<typeof statsOf>[],
): Together[] {
  if (groups.length < 2) return groups.map((group) => ({ groups: [group] }))
  const beside = groups.slice(1).some((group) => areAlike(groups[0]!.columns, group.columns))
  if (!beside) return [{ groups: [...groups] }]
  return groups.map((group) => {
    const places = group.columns.map(({ place }) => place)
    const own = guessColumns(
      places.map((place) => table.columns[place - 1]!),
      places.map((place) => stats[place - 1]!),
      columns,
      turning,
      places,
    )
    countsInDisguise(own)
    return { groups: [{ ...group, columns: own }] }
  })
}

interface Found {
  recordings: Recording[]
  fault: LogFault | null
  remarks: LogRemark[]
}

function recordingsOf(table: Table, sets: readonly Together[], skips: Skips): Found {
  const found: Found = { recordings: [], fault: null, remarks: [] }
  for (const { groups } of sets) {
    const parts = groups.map((group) => partsOf(table, group, skips, groups.length + sets.length > 2))
    found.fault ??= parts.find(({ fault }) => fault)?.fault ?? null
    const [first, ...others] = parts.map(({ recordings }) => recordings)
    if (first && others.every(({ length }) => length === first.length))
      first.forEach((_, index) => {
        const each = parts.map(({ recordings }, g) => ({ recording: recordings[index]!, clock: clockName(groups[g]!) }))
        found.recordings.push(each.length > 1 ? merged(each) : each[0]!.recording)
      })
    else found.recordings.push(...parts.flatMap(({ recordings }) => recordings))
    for (const [index, group] of groups.entries())
      if (index > 0)
        found.remarks.push({ kind: 'interpolated', columns: group.columns.map(nameOf), clock: clockName(group) })
  }
  return found
}

const clockName = ({ clock }: Group) => (clock.kind === 'column' ? clock.column : '')

/** The recordings of one clock. Where there are several, rows that it does not reach are no loss. */
function partsOf(table: Table, group: Group, skips: Skips, several: boolean) {
  const parted = changesOf(group.columns)
  const own = several ? new Skips() : skips
  if (!group.stamps) {
    const segments = segmentsByRate(table, parted, own)
    return { recordings: segments.map((segment) => rated(table, segment, group)), fault: null }
  }
  const { segments, fault } = segmentsByStamps(table, group.stamps, parted, own)
  const { stamps, clock } = group
  const scale = clock.kind === 'column' ? clock.scale : 1
  if (several) for (const { row, lastRow, why } of own.list) if (why.kind !== 'no-time') skips.add(row, why, lastRow)
  const recordings = segments.map((segment) => recordingOf(table, segment, timesOf(stamps, segment.rows, scale), group))
  return { recordings, fault }
}

function rated(table: Table, segment: Segment, group: Group): Recording {
  const step = table.layout!.thinned / (group.clock.kind === 'rate' ? group.clock.rate : 1)
  return recordingOf(
    table,
    segment,
    Float64Array.from(segment.rows, (_, row) => row * step),
    group,
  )
}

/** Rows at which the number of the recording changes; none where it changes so often that it is none. */
function changesOf(columns: readonly Guessed[]): number[] {
  const numbered = columns.find(({ channel }) => channel === 'recording')
  if (!numbered) return []
  const { values } = numbered.raw
  const places: number[] = []
  let before = values[0] ?? Number.NaN
  for (let row = 1; row < values.length; row++) {
    const value = values[row]!
    if (value !== before && !Number.isNaN(value) && !Number.isNaN(before)) places.push(row)
    if (!Number.isNaN(value)) before = value
  }
  if (places.length <= values.length / 3) return places
  numbered.channel = null
  numbered.reason = { kind: 'unknown' }
  return []
}
