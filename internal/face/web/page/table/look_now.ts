import type { Look } from './look'
import { cells, seeing, tokensOf } from './sight'

// lookNow is how the draft is drawn now. It is the same object as long as nothing of it
// changes: a painter then only moves.
let last: { key: string; look: Look } | null = null

export function lookNow(box: Element): Look {
  const look: Look = { cells: cells.peek(), seeing: seeing.peek(), tokens: tokensOf(box) }
  const key = JSON.stringify(look)
  if (!last || key !== last.key) last = { key, look }
  return last.look
}
