import { words } from '../words'
import { Drawing, Says, upTo } from './drawing'

const w = words.guide.drawings

// wave is a thread that bends over and under picks a half wave apart. Its height makes it
// longer by the 8.7 % that a take-up of 8 % is of the cloth.
function wave(half: number, height: number, waves: number, y: number): string {
  const steps = upTo(waves * 12 + 1).map((n) => `${((n * half) / 12).toFixed(1)} ${(y - height * Math.sin((n * Math.PI) / 12)).toFixed(1)}`)
  return `M${steps.join('L')}`
}

// TakeUp is an end in the cloth, and the same end pulled straight.
export function TakeUp() {
  const [half, picks] = [39, 8]
  const cloth = half * picks
  return (
    <Drawing title={w.takeup.title} height={138}>
      <Says x={0} y={16} soft text={w.takeup.bent} />
      {upTo(picks).map((n) => (
        <circle key={n} cx={(n + 0.5) * half} cy={n % 2 ? 40 : 60} r={7} class="weft" />
      ))}
      <path d={wave(half, 7.4, picks, 50)} class="end" />
      <path d={`M${cloth} 34V86M${cloth} 106V124`} class="lead" />
      <Says x={0} y={100} soft text={w.takeup.straight} />
      <path d={`M0 116H${cloth}`} class="end" />
      <path d={`M${cloth} 116H${cloth * 1.087}`} class="end lost" />
      <Says x={cloth * 1.087} y={100} at="end" text={w.takeup.lost} />
    </Drawing>
  )
}

// Cross are two pegs with the ends that cross between them.
export function Cross() {
  const ends = [0, 7, 14]
  return (
    <Drawing title={w.cross.title} height={120}>
      {ends.map((d) => (
        <path key={d} d={crossing(38 - d, 96 - d)} class="end thin" />
      ))}
      {ends.map((d) => (
        <path key={d} d={crossing(82 + d, 24 + d)} class="end thin other" />
      ))}
      <circle cx={105} cy={60} r={15} class="peg" />
      <circle cx={245} cy={60} r={15} class="peg" />
    </Drawing>
  )
}

// crossing is an end that passes the first peg at one height and the second at another.
const crossing = (from: number, to: number): string => `M0 ${from}H105C155 ${from} 195 ${to} 245 ${to}H350`

// Sley are twelve ends in the dents of two reeds, seen from above.
export function Sley() {
  return (
    <Drawing title={w.sley.title} height={150}>
      <Reed y={0} says={w.sley.even} order={[2, 2, 2, 2, 2, 2]} />
      <Reed y={76} says={w.sley.mixed} order={[2, 3, 2, 3, 2]} />
    </Drawing>
  )
}

function Reed({ y, says, order }: { y: number; says: string; order: number[] }) {
  const dent = 340 / order.length
  return (
    <g transform={`translate(5 ${y})`}>
      <Says x={0} y={16} soft text={says} />
      {upTo(order.length + 1).map((n) => (
        <path key={n} d={`M${n * dent} 28V64`} class="wire" />
      ))}
      {order.flatMap((ends, n) => upTo(ends).map((i) => <circle key={`${n}-${i}`} cx={(n + (i + 1) / (ends + 1)) * dent} cy={46} r={6} class="thread" />))}
    </g>
  )
}

// Wraps are turns of a yarn about a ruler, between two marks an inch apart.
export function Wraps() {
  const wide = 288 / 16
  return (
    <Drawing title={w.wraps.title} height={104}>
      <path d="M0 30H350V76H0Z" class="ruler" />
      {upTo(16).map((n) => (
        <path key={n} d={`M${31 + (n + 0.5) * wide} 26V80`} class="turn" />
      ))}
      <path d={`M31 18V30M319 18V30`} class="mark" />
      <path d="M31 88V98H319V88" class="bracket" />
      <Says x={175} y={18} at="middle" text={w.wraps.inch} />
    </Drawing>
  )
}
