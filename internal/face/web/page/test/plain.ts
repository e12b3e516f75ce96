import { onTop, type Table } from '../table/cloth'
import { placeAt, rectOf } from '../table/hit'
import { against, colourOf, seenAs, type Colour } from '../table/light'
import { pixelOf, type Look } from '../table/look'
import { columnOf, endAt, endNumber, pickAt, rowOf, type View } from '../table/view'

// plainDot is what a dot of a drawdown shows, worked out by itself and slowly: what lies
// there, which thread is on top, and whether a line runs over it.
export function plainDot(table: Table, view: View, look: Look, u: number, v: number): number {
  const { ratio } = view.sight.room
  const place = placeAt(view, (u + 0.5) / ratio, (v + 0.5) / ratio)
  if (place?.part !== 'drawdown' || place.end === undefined || place.pick === undefined) throw new Error(`no crossing at ${u}, ${v}`)
  const rect = rectOf(view, place)!
  const [x, y] = [u - rect.x, v - rect.y]
  const line = look.cells === 'colours' ? '' : lineAt(view, place.end, place.pick, x, y)
  if (line) return pixelOf(colourOf(line === 'strong' ? look.tokens.strong : look.tokens.rule))
  return pixelOf(crossing(table, view, look, place.end, place.pick, { ...rect, x, y }))
}

// lineAt says whether the grid runs over a dot of a cell: before each thread but the first
// of the drawing, stronger after every fifth; the stronger is over the thinner.
function lineAt(view: View, end: number, pick: number, x: number, y: number): '' | 'rule' | 'strong' {
  const { sight, dots } = view
  const [column, row] = [columnOf(sight, end), rowOf(sight, pick)]
  const called = (c: number): number => endNumber(sight, endAt(sight, c))
  const fifth = (a: number, b: number): boolean => Math.min(a, b) % 5 === 0
  const kind = (first: boolean, strong: boolean, at: number): '' | 'rule' | 'strong' => {
    if (first) return ''
    if (strong && dots >= 3) return at < (dots >= 16 ? 2 : 1) ? 'strong' : ''
    return dots >= 5 && at < 1 ? 'rule' : ''
  }
  const across = kind(column === 0, fifth(called(column - 1), called(column)), x)
  const down = kind(row === 0, fifth(pickAt(sight, row - 1) + 1, pickAt(sight, row) + 1), y)
  return across === 'strong' || down === 'strong' ? 'strong' : across || down
}

type In = { x: number; y: number; w: number; h: number }

function crossing(table: Table, view: View, look: Look, end: number, pick: number, at: In): Colour {
  const up = onTop(table, pick, end) !== view.sight.arrangement.back
  if (look.cells === 'marks') return colourOf(up ? look.tokens.ink : look.tokens.paper)
  const { cols, rows, sight, dots } = view
  const warp = thread(at.x, at.w, cols.thick?.[columnOf(sight, end)] ?? 1)
  const weft = thread(at.y, at.h, rows.thick?.[rowOf(sight, pick)] ?? 1)
  const dye = (i: number | undefined): Colour => seenAs(colourOf(table.palette[i ?? 0] ?? '#ffffff'), look.seeing)
  const own = dye(table.warp.colours[end])
  if (look.cells === 'both' && up && dots >= 6 && thread(at.x, at.w, 0.36, true) && thread(at.y, at.h, 0.36, true)) return against(own)
  if (warp && (up || !weft)) return own
  return weft ? dye(table.weft.colours[pick]) : colourOf(look.tokens.paper)
}

// thread says whether a dot lies on what takes that share of the middle of its place, which
// is a dot or two at the least.
function thread(at: number, long: number, share: number, mayVanish = false): boolean {
  const off = Math.round((long * (1 - share)) / 2)
  const most = mayVanish ? off : Math.min(off, Math.floor((long - 1) / 2))
  return at >= most && at < long - most
}
