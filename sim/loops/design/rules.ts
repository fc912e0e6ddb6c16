/** Tuning rules as their papers print them: numbers in, numbers out. Gains of controllers u = K·(1 + 1/(Ti s) + Td s)·e. */

export interface Pi {
  gain: number
  integralTime: number
}

export interface SeriesPid extends Pi {
  derivativeTime: number
}

export interface ParallelPid {
  kp: number
  ki: number
  kd: number
}

/** kp, ki from gain and integral time. */
export const parallelPi = ({ gain, integralTime }: Pi) => ({ kp: gain, ki: gain / integralTime })

/** Series (cascade) form K·(1 + 1/(Ti s))·(1 + Td s) written as kp + ki/s + kd·s. */
export const parallelPid = ({ gain, integralTime, derivativeTime }: SeriesPid): ParallelPid => ({
  kp: gain * (1 + derivativeTime / integralTime),
  ki: gain / integralTime,
  kd: gain * derivativeTime,
})

/**
 * Magnitude optimum for k/((1 + T s)(1 + σ s)), T the large and σ the sum of the small time constants: K = T/(2kσ), Ti = T.
 * Kessler, Regelungstechnik 3, 1955, as in Leonhard, Control of Electrical Drives, 3rd ed. (both from memory).
 */
export const magnitudeOptimum = (k: number, large: number, small: number): Pi => ({
  gain: large / (2 * k * small),
  integralTime: large,
})

/**
 * Symmetric optimum for k/(s(1 + σ s)): K = 1/(a k σ), Ti = a² σ, phase margin atan((a − 1/a)/2), 36.9° for a = 2.
 * Kessler, Regelungstechnik 6, 1958, as in Leonhard, Control of Electrical Drives, 3rd ed. (both from memory).
 */
export const symmetricOptimum = (k: number, small: number, a = 2): Pi => ({
  gain: 1 / (a * k * small),
  integralTime: a * a * small,
})

/** SIMC for k·e^(−θs)/(1 + τ s): Skogestad, J. Process Control 13, 2003, table 1. `tau` Infinity with k/τ kept is simcIntegrating. */
export const simcFirstOrder = (k: number, tau: number, delay: number, closed = delay): Pi => ({
  gain: tau / (k * (closed + delay)),
  integralTime: Math.min(tau, 4 * (closed + delay)),
})

/** SIMC for k'·e^(−θs)/s: Skogestad, J. Process Control 13, 2003, table 1. */
export const simcIntegrating = (slope: number, delay: number, closed = delay): Pi => ({
  gain: 1 / (slope * (closed + delay)),
  integralTime: 4 * (closed + delay),
})

/** SIMC for k''·e^(−θs)/s², series form: Skogestad, J. Process Control 13, 2003, table 1. */
export const simcDoubleIntegrating = (slope: number, delay: number, closed = delay): SeriesPid => ({
  gain: 1 / (slope * 4 * (closed + delay) ** 2),
  integralTime: 4 * (closed + delay),
  derivativeTime: 4 * (closed + delay),
})

/**
 * PID on k/(s(s + d)) with closed poles (s² + 2ζω s + ω²)(s + αω): pole placement as in Åström and Hägglund, PID Controllers, 2nd
 * ed., ch. 4 (from memory); the coefficients follow by comparing (s² + d s)·s + k(kd s² + kp s + ki) with that product.
 */
export const placePosition = (k: number, d: number, omega: number, zeta: number, alpha = 1): ParallelPid => ({
  kp: (omega * omega * (1 + 2 * zeta * alpha)) / k,
  ki: (alpha * omega ** 3) / k,
  kd: (omega * (2 * zeta + alpha) - d) / k,
})

/** PI on k/(s + d) with closed poles s² + 2ζω s + ω², by the same comparison. */
export const placeVelocity = (k: number, d: number, omega: number, zeta: number) => ({
  kp: (2 * zeta * omega - d) / k,
  ki: (omega * omega) / k,
})
