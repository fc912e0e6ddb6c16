export interface Complex {
  re: number
  im: number
}

/** `base` to a whole power, by squaring. */
export function power(base: Complex, exponent: number): Complex {
  let { re, im } = base
  let result: Complex = { re: 1, im: 0 }
  for (let n = exponent; n > 0; n = Math.floor(n / 2)) {
    if (n % 2 === 1) result = { re: result.re * re - result.im * im, im: result.re * im + result.im * re }
    ;[re, im] = [re * re - im * im, 2 * re * im]
  }
  return result
}

export const magnitude = ({ re, im }: Complex) => Math.hypot(re, im)

/** The root of `base` with the least angle. */
export function rootOf(base: Complex, degree: number): Complex {
  const size = magnitude(base) ** (1 / degree)
  const angle = Math.atan2(base.im, base.re) / degree
  return { re: size * Math.cos(angle), im: size * Math.sin(angle) }
}
