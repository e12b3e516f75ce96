import { words } from '../words'
import { Drawing, Says, upTo } from './drawing'

const w = words.guide.drawings

// Along is one warp from front to back, the towels' to scale: 340 points are its 270 in.
export function Along() {
  const inch = 340 / 270
  const [tied, header, sampling, piece, gap] = [10, 2, 10, 36.3, 1]
  const first = tied + header + sampling
  return (
    <Drawing title={w.along.title} height={104}>
      <g transform="translate(5 36)">
        <rect width={340} height={30} class="waste" />
        <rect x={tied * inch} width={header * inch} height={30} class="weft" />
        <rect x={(tied + header) * inch} width={sampling * inch} height={30} class="cloth" />
        {upTo(6).map((n) => (
          <rect key={n} x={(first + n * (piece + gap)) * inch} width={piece * inch} height={30} class="cloth" />
        ))}
        <rect width={340} height={30} class="outline" />
      </g>
      <path d={`M${5 + (tied + header + sampling / 2) * inch} 36V24`} class="lead" />
      <Says x={5} y={18} text={w.along.sampling} />
      <Says x={190} y={18} at="middle" text={w.along.towels} />
      <Says x={345} y={18} at="end" text={w.along.waste} />
      <path d="M330 36V24" class="lead" />
      <Says x={5} y={92} soft text={w.along.front} />
      <Says x={345} y={92} at="end" soft text={w.along.back} />
    </Drawing>
  )
}

// Ladder is one towel in its four states, to scale, with what is lost between them.
export function Ladder() {
  const { states, losses } = words.guide.ladder
  const [across, down] = [200 / 36.28, 56]
  const long = [36.28, 34.41, 33.38, 30.71]
  const at = (i: number) => 28 + i * down
  return (
    <Drawing title={w.ladder.title} height={224}>
      {states.map(([id, says, value], i) => (
        <g key={id}>
          <Says x={0} y={at(i) - 8} soft text={says} />
          <Says x={200} y={at(i) - 8} at="end" text={value} figure={id} />
          <rect x={0} y={at(i)} width={(long[i] ?? 0) * across} height={10} class={i === 3 ? 'here' : 'cloth'} />
        </g>
      ))}
      {losses.map(([from, to, says]) => {
        const x = to - from > 1 ? 344 : 212
        const y = (at(from) + at(from + 1)) / 2 + 10
        return (
          <g key={says}>
            <path d={`M${x - 6} ${at(from) + 5}H${x}V${at(to) + (to - from > 1 ? 5 : from === 1 ? 2 : 5)}H${x - 6}`} class="bracket" />
            <Says x={to - from > 1 ? x - 8 : x + 8} y={y} at={to - from > 1 ? 'end' : 'start'} soft text={says} />
          </g>
        )
      })}
    </Drawing>
  )
}

// Share sets a loss of a quarter, divided out, beside a quarter added.
export function Share() {
  const inch = 340 / (28 / 0.75)
  const rows = [
    [w.share.divided, 28 / 0.75],
    [w.share.added, 28 * 1.25],
  ] as const
  return (
    <Drawing title={w.share.title} height={172}>
      <Says x={28 * inch} y={14} at="end" text={w.share.wanted} />
      {rows.map(([says, long], i) => (
        <g key={says} transform={`translate(0 ${34 + i * 66})`}>
          <Says x={0} y={12} soft text={says} />
          <rect y={22} width={long * inch} height={22} class="waste" />
          <rect y={22} width={long * 0.75 * inch} height={22} class={i === 0 ? 'cloth' : 'short'} />
          <text x={8} y={38} class="on">
            {w.share.kept}
          </text>
          <Says x={long * inch - 8} y={38} at="end" text={w.share.lost} />
        </g>
      ))}
      <path d={`M${28 * inch} 20V160`} class="mark" />
    </Drawing>
  )
}
