/** What share of the parts lies below a band of traces, and above it. By itself, as the page says it without carrying what computes a band. */
export const BEYOND = 0.05
