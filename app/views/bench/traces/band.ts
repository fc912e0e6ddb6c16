/** On wish the traces carry where most of the parts lie that the file's spread draws: gripped while the bench is at rest. */
import { useEffect, useMemo, useState } from 'react'
import { create } from 'zustand'
import { type Channel, type Scenario, STRATEGIES, type StrategyId, type TraceBand } from '../../../../sim/index.ts'
import { useNominal } from '../../../store/lent.ts'
import { useResults } from '../../../store/results.ts'
import { useView } from '../../../store/view.ts'
import type { ChartRange } from '../../../ui/Chart.tsx'

/** Parts gripped by each strategy: the first of the study with the file's seed. */
export const PARTS = 100

/** Rest after the last change before they are gripped [ms]. */
const REST = 600

interface Bands {
  /** Whether the traces carry it. */
  wanted: boolean
  bands: Partial<Record<StrategyId, TraceBand>>
  /** Share that is gripped, 0 … 1. */
  done: number
  /** Why there is none. */
  message: string
}

const NONE = { bands: {}, done: 0, message: '' }

export const useBands = create<Bands>()(() => ({ wanted: false, ...NONE }))

/** Whether the file has a spread, so that there is a band to show. */
export const useVaries = () => useNominal().spread.varies.length > 0

/** Keeps the bands those of what is on the bench; a change lets go of what is under way. */
export function useBandStudy(): void {
  const wanted = useBands((state) => state.wanted)
  const scenario = useNominal()
  const shown = useView((state) => state.shown)
  const charts = useView((state) => state.charts)
  const resting = useResults(({ runs }) => shown.every((id) => runs[id]?.status === 'done'))
  const wish = useMemo(() => ({ scenario, shown, charts }), [scenario, shown, charts])
  const [rested, setRested] = useState<typeof wish | null>(null)
  useEffect(() => {
    if (!wanted || scenario.spread.varies.length === 0) return
    const timer = setTimeout(() => setRested(wish), REST)
    return () => {
      clearTimeout(timer)
      useBands.setState(NONE)
      setRested(null)
    }
  }, [wanted, wish, scenario])
  useEffect(() => {
    if (!rested || !resting) return
    let on = true
    grip(rested.scenario, rested.shown, rested.charts, () => on)
    return () => {
      on = false
    }
  }, [rested, resting])
}

async function grip(scenario: Scenario, shown: StrategyId[], channels: Channel[], wanted: () => boolean) {
  const study = { scenario, strategies: shown, grips: PARTS, seed: scenario.run.seed, sampling: 'sobol' as const }
  const order = STRATEGIES.filter(({ id }) => shown.includes(id))
  try {
    // It comes when it is asked for: the first view goes without.
    const { crew, runBand } = await import('./gripBand.ts')
    for (const [at, { id }] of order.entries()) {
      const band = await runBand({ ...study, channels }, id, crew, (done) => {
        if (wanted()) useBands.setState({ done: (at + done) / order.length })
        return wanted()
      })
      if (!band || !wanted()) return
      useBands.setState(({ bands }) => ({ bands: { ...bands, [id]: band } }))
    }
  } catch (error) {
    if (wanted()) useBands.setState({ message: error instanceof Error ? error.message : String(error) })
  }
}

/** The areas of one channel, as a chart draws them. */
export function rangesOf(channel: Channel, bands: Bands['bands'], shown: StrategyId[]): ChartRange[] {
  return STRATEGIES.filter(({ id }) => shown.includes(id)).flatMap(({ id }) => {
    const band = bands[id]
    const [low, high] = [band?.low[channel], band?.high[channel]]
    return band && low && high ? [{ time: band.time, low, high, color: `var(--strategy-${id})` }] : []
  })
}
