import { useResults } from '../store/results.ts'
import { Button } from '../ui/Button.tsx'

/** One sentence that the person should know, until it is put away. */
export function Notice() {
  const notice = useResults((state) => state.notice)
  const { say } = useResults.getState()
  return (
    <div role="status" className="notice-place">
      {notice && (
        <p className="notice">
          {notice}
          <Button quiet onClick={() => say(null)}>
            Put away
          </Button>
        </p>
      )}
    </div>
  )
}
