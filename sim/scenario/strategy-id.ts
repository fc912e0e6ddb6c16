/** How files, links and the command line name the strategies; `sim/strategy` lists what each is. */
export type StrategyId = 'threshold-stop' | 'current-clamp' | 'sensed-force'
