import { useResults } from '../store/results.ts'

/** One sentence that the person should know, until it is put away. */
export function Notice() {
  const notice = useResults((state) => state.notice)
  const { say } = useResults.getState()
  return (
    <div role="status" className="notice-place">
      {notice && (
        <p className="notice">
          {notice}
          <button type="button" className="quiet" onClick={() => say(null)}>
            Put away
          </button>
        </p>
      )}
    </div>
  )
}
