import type { Look, Tokens } from './look'
import { cells, seeing, tokensOf } from './sight'

// The colours of the page are read once for light and once for dark: to read them makes the
// browser work out the style of the page.
const dark = matchMedia('(prefers-color-scheme: dark)')
let read: { dark: boolean; tokens: Tokens } | null = null

function tokensNow(box: Element): Tokens {
  if (read?.dark === dark.matches) return read.tokens
  const tokens = tokensOf(box)
  if (tokens.ground && tokens.paper) read = { dark: dark.matches, tokens }
  return tokens
}

// lookNow is how the draft is drawn now. It is the same object as long as nothing of it
// changes: a painter then only moves.
let last: Look | null = null

export function lookNow(box: Element): Look {
  const look: Look = { cells: cells.peek(), seeing: seeing.peek(), tokens: tokensNow(box) }
  if (last && last.cells === look.cells && last.seeing === look.seeing && last.tokens === look.tokens) return last
  return (last = look)
}
