/** A figure as the tables of the studies print it; a dash for one that does not exist. */
export const figureText = (value: number | null, digits = 4) =>
  value === null ? '—' : String(Number(value.toPrecision(digits)))
