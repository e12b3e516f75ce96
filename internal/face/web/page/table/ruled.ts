import { dotAt, threadAt, type Axis } from './axis'
import { isStrong } from './rulers'

// What lies at each dot along one way of a cloth: which thread, whether the thread itself or
// the room beside it, and whether a line of the grid.

// Bits of Ruled.kind.
export const [isThread, isMark, isFine, isHeavy] = [1, 2, 4, 8]

export type Ruled = {
  readonly thread: Int32Array // the place of the thread; -1 beyond the cloth
  readonly kind: Uint8Array
}

// Cells need so many dots for a thin line, for a stronger one, for a mark and for a stronger
// line to be twice as wide: lines closer than that would cover the cloth.
const [fineFrom, heavyFrom, markFrom, wideFrom] = [5, 3, 6, 16]

// markShare is the side of the mark that says that the warp is on top, as a share of its
// cell, as on paper.
const markShare = 0.36

// ruledOf says it for so many dots from one on. number is what a thread is called; grid says
// whether there are lines.
export function ruledOf(axis: Axis, cell: number, from: number, dots: number, number: (i: number) => number, grid: boolean): Ruled {
  const out = { thread: new Int32Array(dots).fill(-1), kind: new Uint8Array(dots) }
  const end = Math.min(from + dots, dotAt(axis, axis.n, cell))
  for (let i = threadAt(axis, from, cell); i < axis.n; i++) {
    const [low, high] = [dotAt(axis, i, cell), dotAt(axis, i + 1, cell)]
    if (low >= end) break
    const line = grid && i > 0 ? lineOf(cell, isStrong(number(i - 1), number(i))) : none
    for (let dot = Math.max(low, from); dot < Math.min(high, end); dot++) {
      out.thread[dot - from] = i
      out.kind[dot - from] = dot - low < line.wide ? line.kind : kindOf(dot, low, high, axis.thick?.[i] ?? 1, cell)
    }
  }
  return out
}

type Line = { readonly wide: number; readonly kind: number }

const none: Line = { wide: 0, kind: 0 }

export function lineOf(cell: number, strong: boolean): Line {
  if (strong && cell >= heavyFrom) return { wide: cell >= wideFrom ? 2 : 1, kind: isHeavy }
  return cell >= fineFrom ? { wide: 1, kind: isFine } : none
}

function kindOf(dot: number, low: number, high: number, thick: number, cell: number): number {
  const off = Math.min(Math.round(((high - low) * (1 - thick)) / 2), (high - low - 1) >> 1)
  const edge = Math.round(((high - low) * (1 - markShare)) / 2)
  const within = (by: number): boolean => dot >= low + by && dot < high - by
  return (within(off) ? isThread : 0) | (cell >= markFrom && within(edge) ? isMark : 0)
}
