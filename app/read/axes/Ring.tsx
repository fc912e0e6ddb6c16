import './axes.css'

/** The sign of the axis beside: before its name, along its lines. */
export const Ring = () => (
  <svg className="ring" viewBox="0 0 10 10" aria-hidden="true">
    <circle cx="5" cy="5" r="3.6" />
  </svg>
)
