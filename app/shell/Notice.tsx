import { useResults } from '../store/results.ts'
import { Button } from '../ui/Button.tsx'

/** One sentence that the person should know, and what stands behind it, until it is put away. */
export function Notice() {
  const notice = useResults((state) => state.notice)
  const details = useResults((state) => state.details)
  const { say } = useResults.getState()
  return (
    <div role="status" className="notice-place">
      {notice && (
        <div className="notice">
          <p>{notice}</p>
          <Button quiet onClick={() => say(null)}>
            Put away
          </Button>
          {details.length > 0 && (
            <details key={notice}>
              <summary>{details.length === 1 ? 'One change' : `All ${details.length} changes`}</summary>
              <ul>
                {details.map((line) => (
                  <li key={line}>{line}</li>
                ))}
              </ul>
            </details>
          )}
        </div>
      )}
    </div>
  )
}
