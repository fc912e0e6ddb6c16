import { useView } from '../../store/view.ts'

/** Where there is no run to show. */
export function NoGrip() {
  const none = useView((state) => state.shown.length === 0)
  return (
    <p className="present-none">
      {none ? 'No strategy is shown: choose one on the bench.' : 'Nothing has closed yet: the first run is on its way.'}
    </p>
  )
}
