import { AFTER_DASH, BEFORE_DASH, SIMULATED } from './look.ts'

/** What the lines of the charts are. */
export function Key({ fitted }: { fitted: boolean }) {
  return (
    <p className="log-key">
      <Line dash={[]} color="var(--ink)" width={1} /> measured <Line dash={BEFORE_DASH} color={SIMULATED} width={1.5} />{' '}
      simulated as on the bench
      {fitted && (
        <>
          {' '}
          <Line dash={AFTER_DASH} color={SIMULATED} width={2.25} /> simulated as fitted
        </>
      )}
    </p>
  )
}

const Line = ({ dash, color, width }: { dash: number[]; color: string; width: number }) => (
  <svg width="28" height="8" aria-hidden="true">
    <path d="M0 4H28" style={{ stroke: color, strokeWidth: width, strokeDasharray: dash.join(' ') }} />
  </svg>
)
