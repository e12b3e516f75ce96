import { copy, insert, paste } from './clip'
import { between, first, isDrawable, limits, moved, partsOf, stretchOf, threadWay } from './cursor'
import { type Place, ways } from './hit'
import { figured } from './figures'
import { colour, held, parted } from './hold'
import { awaited, draw, fixed, table } from './session'
import { same, setAt, setOf } from './sets'
import { chosen, cursor, view } from './sight'
import { actsOf, begun, splicesOf } from './strokes'
import { jumpedTo, larger, smaller, zoomedAt } from './view'
import type { Table } from './cloth'

// Keys over the draft: arrows go from cell to cell, and with shift they choose.

const steps: Record<string, [number, number]> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }

// onKey reports whether a key was for the draft.
export function onKey(event: KeyboardEvent): boolean {
  const of = table.value
  if (!of || event.altKey) return false
  const at = cursor.value && isDrawable(cursor.value.part) ? cursor.value : first(of, 'threading')
  if (event.ctrlKey || event.metaKey) return withControl(of, event.key.toLowerCase())
  if (/^\d$/.test(event.key)) return figure(of, at, Number(event.key))
  if (parts(at, event.key)) return true
  const step = steps[event.key]
  if (step) return go(of, at, ...turned(at, step), event.shiftKey)
  return pressed(of, at, event)
}

// turned is a step as it is seen: shafts and picks may be drawn upwards, ends the other way.
function turned(at: Place, [across, down]: [number, number]): [number, number] {
  const sight = view.value?.sight
  if (!sight || !isDrawable(at.part)) return [across, down]
  const { arrangement } = sight
  const [x, y] = ways[at.part]
  const mirrored = (x === 'end' && arrangement.back) || ((x === 'treadle' || x === 'shaft') && arrangement.left)
  const upwards = (y === 'shaft' && !arrangement.below) || (y === 'pick' && arrangement.upwards)
  return [mirrored ? -across : across, upwards ? -down : down]
}

function go(of: Table, at: Place, across: number, down: number, choosing: boolean): boolean {
  const to = cursor.value ? moved(of, at, across, down) : at
  if (choosing) chosen.value = between(anchor(at), to)
  else chosen.value = null
  show(to)
  return true
}

// anchor is where a choice by keys began: the end of it that the cursor is not at.
function anchor(at: Place): Place {
  const area = chosen.value
  if (!area || area.part !== at.part || !isDrawable(at.part)) return at
  const way = threadWay(at.part)
  const span = way === 'end' ? area.ends : way === 'pick' ? area.picks : area.treadles
  if (!span) return at
  return { ...at, [way]: at[way] === span[0] ? span[1] - 1 : span[0] }
}

export function show(to: Place): void {
  cursor.value = to
  const now = view.value
  if (now) view.value = jumpedTo(now, { ...(to.end === undefined ? {} : { end: to.end }), ...(to.pick === undefined ? {} : { pick: to.pick }) })
}

function pressed(of: Table, at: Place, event: KeyboardEvent): boolean {
  switch (event.key) {
    case ' ':
    case 'Enter':
      return mark(of, at)
    case 'Home':
    case 'End':
      return edge(of, at, event.key === 'Home', event.shiftKey)
    case 'PageUp':
    case 'PageDown':
      return go(of, at, 0, event.key === 'PageUp' ? -10 : 10, event.shiftKey)
    case 'Insert':
      return insert(of)
    case 'Delete':
    case 'Backspace':
      return remove()
    case '+':
      return zoom(larger)
    case '-':
      return zoom(smaller)
    case 'p':
    case 'P':
      return nextPart(of, at, event.shiftKey ? -1 : 1)
    case 'Escape':
      return escape()
  }
  return false
}

// mark does what a pointer does that is put down and lifted.
function mark(of: Table, at: Place): boolean {
  if (fixed.value) return true
  cursor.value = at
  const acts = actsOf(of, begun(at, at.part === 'treadling' ? 'toggle' : 'line', colour.value), awaited.value)
  draw(acts, splicesOf(acts))
  return true
}

function edge(of: Table, at: Place, atFirst: boolean, choosing: boolean): boolean {
  if (!isDrawable(at.part)) return false
  const way = threadWay(at.part)
  const [least, most] = limits(of, way)
  const to = { ...at, [way]: atFirst ? least : most }
  chosen.value = choosing ? between(anchor(at), to) : null
  show(to)
  return true
}

function remove(): boolean {
  const at = stretchOf(chosen.value)
  if (!at || at.drawable.endsWith('colours')) return false
  draw([{ do: 'delete', part: at.part, from: at.from, to: at.to }])
  chosen.value = null
  return true
}

function zoom(to: (cell: number) => number): boolean {
  const now = view.value
  if (now) view.value = zoomedAt(now, to(now.cell), now.sight.room.width / now.sight.room.ratio / 2, now.sight.room.height / now.sight.room.ratio / 2)
  return true
}

function nextPart(of: Table, at: Place, by: number): boolean {
  const all = partsOf(of)
  const i = all.findIndex((part) => part === at.part)
  const part = all[(i + by + all.length) % all.length]
  if (part) show(first(of, part, at))
  chosen.value = null
  return true
}

function escape(): boolean {
  if (!chosen.value) return false
  chosen.value = null
  return true
}

// figure is one of a number where the cursor is.
function figure(of: Table, at: Place, typed: number): boolean {
  const other = counted(at)
  if (fixed.value || !other) return false
  const now = figured(held.value, typed, limits(of, other)[1])
  const known = held.value > 0 || now.held > 0
  held.value = now.held
  for (const n of now.put) number(other, n)
  return known || now.put.length > 0
}

const counted = (at: Place): 'shaft' | 'treadle' | null => (at.part === 'threading' ? 'shaft' : at.part === 'treadling' ? 'treadle' : null)

// parts reports whether a key did no more than to end a number. A space does that also after
// one that was whole by itself, an arrow only goes on, and Escape forgets what was begun.
function parts(at: Place, key: string): boolean {
  const [begun, other] = [held.value, counted(at)]
  const after = !parted.value && key === ' '
  parted.value = true
  held.value = 0
  if (begun === 0 || !other) return after
  if (key === 'Escape') return true
  number(other, begun)
  parted.value = true
  return key === ' ' || key === 'Enter' || key in steps
}

// settle puts a number that was begun, for who leaves the draft.
export function settle(): void {
  if (cursor.value) parts(cursor.value, ' ')
}

// number puts one where the cursor is, and goes on to the next thread.
function number(other: 'shaft' | 'treadle', n: number): void {
  const of = table.value
  const at = of && (cursor.value && isDrawable(cursor.value.part) ? cursor.value : first(of, 'threading'))
  if (!of || !at || !isDrawable(at.part)) return
  const way = threadWay(at.part)
  const acts = actsOf(of, begun({ ...at, [other]: n }, 'line'))
  if (!isSet(of, at, n)) draw(acts, splicesOf(acts))
  show({ ...moved(of, at, way === 'end' ? 1 : 0, way === 'pick' ? 1 : 0), [other]: n })
  parted.value = false
}

const isSet = (of: Table, at: Place, n: number): boolean => (at.part === 'threading' ? of.threading[at.end ?? -1] === n : same(setAt(of.treadling, at.pick ?? -1), setOf(n)))

function withControl(of: Table, key: string): boolean {
  switch (key) {
    case 'c':
      return copy(of)
    case 'x':
      return copy(of) && remove()
    case 'v':
      return paste(of)
    case 'a':
      return all(of)
  }
  return false
}

function all(of: Table): boolean {
  const at = cursor.value ?? first(of, 'threading')
  if (!isDrawable(at.part)) return false
  const way = threadWay(at.part)
  const [least, most] = limits(of, way)
  chosen.value = between({ ...at, [way]: least }, { ...at, [way]: most })
  return true
}
