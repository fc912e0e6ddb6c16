declare module 'virtual:core' {
  /** The compiled core's bytes, base64. */
  const base64: string
  export default base64
}
