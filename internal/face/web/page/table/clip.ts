import type { Table } from './cloth'
import { type Drawable, isDrawable, listPart, stretchOf, threadWay } from './cursor'
import type { Place } from './hit'
import { copied } from './hold'
import { type AnyAct, draw, fixed } from './session'
import { setAt, setText } from './sets'
import { chosen, cursor } from './sight'
import type { Part, Splices } from './splice'

// What is copied of a list, and put into one.

// copy keeps the chosen stretch.
export function copy(of: Table): boolean {
  const at = stretchOf(chosen.value)
  if (!at) return false
  copied.value = { part: at.part, values: valuesOf(of, at.part).slice(at.from, at.to) }
  return true
}

export function valuesOf(of: Table, part: Part): (number | string)[] {
  switch (part) {
    case 'threading':
      return [...of.threading]
    case 'warp-colours':
      return [...of.warp.colours]
    case 'weft-colours':
      return [...of.weft.colours]
    case 'palette':
      return [...of.palette]
  }
  const sets = of[part]
  return Array.from(sets.lo, (_, i) => setText(setAt(sets, i)))
}

// taken is the stretch of a list that is chosen, or nothing of it before the cursor.
function taken(part: Part, here: Place, drawn: Drawable): { from: number; to: number } {
  const at = stretchOf(chosen.value)
  if (at?.part === part) return at
  const from = (here[threadWay(drawn)] ?? 0) - (drawn === 'ties' ? 1 : 0)
  return { from, to: from }
}

// insert puts one more before the chosen stretch, or before the cursor: as what stands there,
// of the treadles one that is not tied.
export function insert(of: Table): boolean {
  const here = cursor.value
  if (fixed.value || !here || !isDrawable(here.part) || here.part.endsWith('colours')) return false
  const part = listPart(here.part)
  const { from } = taken(part, here, here.part)
  const put = part === 'ties' ? ['0'] : [valuesOf(of, part)[from] ?? 0]
  draw([{ do: 'put', part, at: from, remove: 0, put }], part === 'ties' ? {} : ({ [part]: { at: from, remove: 0, put } } as Splices))
  return true
}

// paste puts what was copied in the place of the chosen stretch, or before the cursor; of
// colours it is laid over.
export function paste(of: Table): boolean {
  const held = copied.value
  const here = cursor.value
  if (!held || fixed.value || !here || !isDrawable(here.part)) return false
  const part = held.part as Part
  const { from, to } = taken(part, here, here.part)
  const whole = valuesOf(of, part).length
  const colours = part.endsWith('colours')
  const put = colours ? held.values.slice(0, whole - from) : held.values
  const remove = colours ? put.length : to - from
  const act: AnyAct = { do: 'put', part, at: from, remove, put }
  draw([act], { [part]: { at: from, remove, put } } as Splices)
  return true
}
