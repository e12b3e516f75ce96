import { effect } from '@preact/signals'
import { useEffect, useRef, useState } from 'preact/hooks'
import { words } from '../words'
import { valuesOf } from './clip'
import { clock } from './clock'
import type { Table } from './cloth'
import { cellOf } from './cursor'
import { named } from './facts'
import { Hands } from './hands'
import { type Place, rectOf } from './hit'
import { held } from './hold'
import { onKey, settle } from './keys'
import { lookNow } from './look_now'
import { Painter } from './paint'
import { awaited, table } from './session'
import { arrangement, cells, chosen, cursor, found, keepSight, room, seeing, shownTable, touched, view } from './sight'
import type { Part } from './splice'
import type { Ink } from './surface'

const w = words.table

// Canvas is the draft itself: the drawing, above it what is pointed out, and what is said of
// the place where the keyboard is.
export function Canvas() {
  const box = useRef<HTMLDivElement>(null)
  const below = useRef<HTMLCanvasElement>(null)
  const above = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    return box.current && below.current && above.current ? paintOn(box.current, below.current, above.current) : undefined
  }, [])
  return (
    <div
      ref={box}
      class="draft-table"
      tabIndex={0}
      role="application"
      aria-roledescription={w.roleSays}
      aria-label={w.tableOf(named.value)}
      aria-describedby="table-keys"
      onBlur={settle}
      onKeyDown={(event) => {
        if (onKey(event)) event.preventDefault()
      }}
    >
      {held.value > 0 && <p class="held">{w.held(held.value)}</p>}
      <canvas ref={below} aria-hidden="true" />
      <canvas ref={above} aria-hidden="true" />
      <p class="hidden" aria-live="assertive">
        <Spoken />
      </p>
    </div>
  )
}

// pause is how long the cursor stays at a cell before that is said, in ms: who draws over many
// is told of the last.
const pause = 100

// Spoken is the cell at the cursor in words.
function Spoken() {
  const [said, say] = useState('')
  useEffect(() => {
    let timer = 0
    const end = effect(() => {
      const [of, at, n] = [table.value, cursor.value, held.value]
      clearTimeout(timer)
      timer = window.setTimeout(() => say(n > 0 ? w.held(n) : of && at ? w.cell(cellOf(of, at)) : ''), pause)
    })
    return () => {
      end()
      clearTimeout(timer)
    }
  }, [])
  return <>{said}</>
}

// paintOn keeps canvases in step with the draft, and what it returns ends that.
function paintOn(box: HTMLElement, below: HTMLCanvasElement, above: HTMLCanvasElement): () => void {
  const inks = [below, above].map((canvas) => canvas.getContext('2d') as unknown as Ink)
  const [ink, over] = inks as [Ink, Ink]
  const painter = new Painter(ink, clock, () => painter.paint())
  let frame = 0
  const soon = (): void => {
    frame ||= requestAnimationFrame(() => {
      frame = 0
      paint(painter, over, box)
    })
  }
  const sized = new ResizeObserver(() => measure(box, [below, above]))
  sized.observe(box)
  const dark = matchMedia('(prefers-color-scheme: dark)')
  dark.addEventListener('change', soon)
  const ends = [keepSight(), effect(() => (touch(), soon()))]
  new Hands(box)
  Object.assign(box, { spotOf: (place: Place) => spotOf(box, place), shownOf: (part: Part) => (table.peek() ? valuesOf(table.peek() as Table, part) : null) })
  return () => {
    for (const end of ends) end()
    sized.disconnect()
    dark.removeEventListener('change', soon)
    cancelAnimationFrame(frame)
  }
}

// spotOf is the middle of a place in the window, in CSS px, for those who point by program; what
// they then see is shownOf.
function spotOf(box: HTMLElement, place: Place): { x: number; y: number } | null {
  const now = view.peek()
  const rect = now && rectOf(now, place)
  if (!rect) return null
  const { left, top } = box.getBoundingClientRect()
  const { ratio } = room.peek()
  return { x: left + box.clientLeft + (rect.x + rect.w / 2) / ratio, y: top + box.clientTop + (rect.y + rect.h / 2) / ratio }
}

// touch names everything that a picture is of.
const touch = (): unknown[] => [shownTable.value, view.value, cells.value, seeing.value, arrangement.value, chosen.value, found.value, cursor.value, touched.value, awaited.value]

function paint(painter: Painter, over: Ink, box: HTMLElement): void {
  const [of, now] = [shownTable.peek(), view.peek()]
  if (!of || !now) return
  painter.show(of, now, lookNow(box))
  painter.paint()
  const fill = of.fill && [...(of.fill.threading[1] > 0 ? [{ part: 'threading' as const, ends: of.fill.threading }] : []), ...(of.fill.picks[1] > 0 ? [{ part: of.treadling.lo.length > 0 ? ('treadling' as const) : ('lifts' as const), picks: of.fill.picks }] : [])]
  painter.point(over, { coming: [...awaited.peek(), ...touched.peek()], chosen: chosen.peek() ? [chosen.peek() as never] : [], found: found.peek(), fill: fill ?? [], cursor: document.activeElement === box ? cursor.peek() : null })
}

function measure(box: HTMLElement, canvases: HTMLCanvasElement[]): void {
  const ratio = window.devicePixelRatio || 1
  const [width, height] = [Math.round(box.clientWidth * ratio), Math.round(box.clientHeight * ratio)]
  for (const canvas of canvases) {
    if (canvas.width !== width) canvas.width = width // which clears it
    if (canvas.height !== height) canvas.height = height
  }
  room.value = { width, height, ratio }
}
