import type { ComponentProps } from 'react'

/** `quiet` has no frame until it is pointed at; `pressed` makes it a switch. */
export function Button({
  quiet = false,
  pressed,
  className = '',
  ...rest
}: ComponentProps<'button'> & { quiet?: boolean; pressed?: boolean }) {
  return (
    <button type="button" aria-pressed={pressed} className={`button ${quiet ? 'quiet' : ''} ${className}`} {...rest} />
  )
}
