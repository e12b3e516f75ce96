import { words } from '../words'
import { Drawing, Says } from './drawing'

const w = words.guide.drawings.draft

// A point twill on four shafts, two of which each treadle moves.
const threading = [1, 2, 3, 4, 3, 2, 1, 2, 3, 4, 3, 2, 1]
const tieUp = [[1, 2], [2, 3], [3, 4], [1, 4]]
const treadling = [1, 2, 3, 4, 3, 2, 1]
const marked = 1 // the row that the text follows

const cell = 17
const gap = 10
const right = threading.length * cell + gap
const top = 26
const below = top + 4 * cell + gap

// Draft is a draft with its drawdown, as handbooks print them.
export function Draft() {
  const wide = threading.length * cell
  return (
    <Drawing title={w.title} height={below + treadling.length * cell + 26}>
      <rect x={0} y={below + marked * cell} width={right + 4 * cell} height={cell} class="row" />
      <Grid x={0} y={top} columns={threading.length} rows={4} on={(i, j) => threading[i] === 4 - j} />
      <Grid x={right} y={top} columns={4} rows={4} on={(i, j) => (tieUp[i] ?? []).includes(4 - j)} />
      <Grid x={0} y={below} columns={threading.length} rows={treadling.length} on={(i, j) => isUp(i, j)} />
      <Grid x={right} y={below} columns={4} rows={treadling.length} on={(i, j) => treadling[j] === i + 1} />
      <Says x={0} y={16} soft text={w.threading} />
      <Says x={right} y={16} soft text={w.tieUp} />
      <Says x={0} y={below + treadling.length * cell + 18} soft text={w.drawdown} />
      <Says x={wide + gap} y={below + treadling.length * cell + 18} soft text={w.treadling} />
    </Drawing>
  )
}

// isUp says whether an end is on top of a pick: its shaft is moved by the pick's treadle.
const isUp = (end: number, pick: number): boolean => (tieUp[(treadling[pick] ?? 0) - 1] ?? []).includes(threading[end] ?? 0)

type GridProps = { x: number; y: number; columns: number; rows: number; on: (column: number, row: number) => boolean }

function Grid({ x, y, columns, rows, on }: GridProps) {
  let filled = ''
  let lines = ''
  for (let i = 0; i <= columns; i++) lines += `M${i * cell} 0v${rows * cell}`
  for (let j = 0; j <= rows; j++) lines += `M0 ${j * cell}h${columns * cell}`
  for (let i = 0; i < columns; i++) for (let j = 0; j < rows; j++) if (on(i, j)) filled += `M${i * cell} ${j * cell}h${cell}v${cell}h-${cell}z`
  return (
    <g transform={`translate(${x} ${y})`}>
      <path d={filled} class="filled" />
      <path d={lines} class="grid" />
    </g>
  )
}
