/** The hatching outside the force window, as fine as the text is large [px]. */
export function Hatch({ id, text }: { id: string; text: number }) {
  const pitch = 0.4 * text
  return (
    <pattern id={id} width={pitch} height={pitch} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <path d={`M0 0V${pitch}`} className="story-hatch" />
    </pattern>
  )
}
