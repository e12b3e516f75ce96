import { between, isDrawable } from './cursor'
import { nearest, placeAt, type Place } from './hit'
import { colour, tool, way } from './hold'
import { awaited, draw, fixed, table, uncoloured } from './session'
import { chosen, cursor, touched, underway, view } from './sight'
import { spliced } from './splice'
import { actsOf, begun, crossingsOf, drawnTo, splicesOf, type Stroke } from './strokes'
import { panned, zoomedAt } from './view'

// Pointers over the draft. One draws, chooses or moves, as the hand holds; two always move
// and zoom; one that rests begins to choose.

type Spot = { x: number; y: number }

// longPress is how long a finger rests to choose, in ms, and stir how far it may stir, in px.
const longPress = 500
const stir = 8

// none is one list: a signal that is given the same again tells nobody.
const none: [] = []

export class Hands {
  private readonly down = new Map<number, Spot>()
  private stroke: Stroke | null = null
  private from: Place | null = null // of a choice
  private panning = false
  private resting = 0
  private frame = 0 // in which the stroke is shown next

  constructor(private readonly of: HTMLElement) {
    of.addEventListener('pointerdown', this.put)
    of.addEventListener('pointermove', this.move)
    of.addEventListener('pointerup', this.lift)
    of.addEventListener('pointercancel', this.cancel)
    of.addEventListener('wheel', this.wheel, { passive: false })
    of.addEventListener('contextmenu', this.menu)
  }

  private spot(event: MouseEvent): Spot {
    const box = this.of.getBoundingClientRect()
    return { x: event.clientX - box.left - this.of.clientLeft, y: event.clientY - box.top - this.of.clientTop }
  }

  private readonly menu = (event: Event): void => event.preventDefault() // a long press asks for one

  private readonly put = (event: PointerEvent): void => {
    if (event.pointerType === 'mouse' && event.button > 1) return
    this.of.setPointerCapture(event.pointerId)
    const spot = this.spot(event)
    this.down.set(event.pointerId, spot)
    if (this.down.size > 1) return this.letGo()
    this.begin(spot, event)
  }

  private begin(spot: Spot, event: PointerEvent): void {
    const now = view.value
    const at = now && placeAt(now, spot.x, spot.y)
    this.panning = tool.value === 'move' || event.button === 1
    if (this.panning || !at || !table.value) return
    if (!isDrawable(at.part)) return this.choose(threadOf(at))
    cursor.value = at
    if (tool.value === 'choose' || event.shiftKey) return this.choose(at)
    chosen.value = null
    if (fixed.value || (uncoloured.value && at.part.endsWith('colours'))) return
    this.stroke = begun(at, way.value, colour.value)
    this.show()
    if (event.pointerType === 'touch') this.resting = window.setTimeout(() => this.rested(at), longPress)
  }

  // rested turns a stroke that has not begun to move into a choice.
  private rested(at: Place): void {
    this.letGo()
    this.choose(at)
    navigator.vibrate?.(15)
  }

  private choose(at: Place | null): void {
    this.from = at
    chosen.value = at && between(at, at)
    cursor.value = at
  }

  private readonly move = (event: PointerEvent): void => {
    const was = this.down.get(event.pointerId)
    if (!was) return
    const spots = event.getCoalescedEvents?.() ?? []
    for (const one of spots.length > 0 ? spots : [event]) this.go(event.pointerId, this.spot(one))
    this.frame ||= requestAnimationFrame(() => {
      this.frame = 0
      this.show()
    })
  }

  private go(id: number, spot: Spot): void {
    const was = this.down.get(id)
    const now = view.value
    if (!was || !now) return
    if (this.down.size === 2) return this.pinch(id, was, spot)
    if (this.resting && Math.hypot(spot.x - was.x, spot.y - was.y) < stir) return
    this.awake()
    this.down.set(id, spot)
    if (this.panning) view.value = panned(now, was.x - spot.x, was.y - spot.y)
    else if (this.stroke) {
      const at = nearest(now, this.stroke.part, spot.x, spot.y)
      if (at) this.stroke = drawnTo(this.stroke, at)
    } else if (this.from) {
      const at = nearest(now, this.from.part, spot.x, spot.y)
      chosen.value = (at && between(this.from, at)) ?? chosen.value
      cursor.value = at ?? cursor.value
    }
  }

  // pinch moves and zooms by two fingers: what lay between them stays there.
  private pinch(id: number, was: Spot, spot: Spot): void {
    const other = [...this.down].find(([key]) => key !== id)?.[1]
    const now = view.value
    if (!other || !now) return
    const long = (a: Spot): number => Math.max(Math.hypot(a.x - other.x, a.y - other.y), 1)
    const [x, y] = [(spot.x + other.x) / 2, (spot.y + other.y) / 2]
    view.value = panned(zoomedAt(now, (now.cell * long(spot)) / long(was), x, y), (was.x - spot.x) / 2, (was.y - spot.y) / 2)
    this.down.set(id, spot)
  }

  // show draws the stroke as far as it came.
  private show(): void {
    const of = table.value
    if (!this.stroke || !of) return
    const acts = actsOf(of, this.stroke, awaited.value)
    if (this.stroke.part === 'drawdown') touched.value = crossingsOf(acts)
    else underway.value = spliced(of, { splices: splicesOf(acts) })
    cursor.value = this.stroke.places.at(-1) ?? cursor.value
  }

  private readonly lift = (event: PointerEvent): void => {
    this.down.delete(event.pointerId)
    this.awake()
    const of = table.value
    const { stroke } = this
    this.letGo()
    if (!stroke || !of) return
    const acts = actsOf(of, stroke, awaited.value)
    draw(acts, splicesOf(acts))
  }

  private readonly cancel = (event: PointerEvent): void => {
    this.down.delete(event.pointerId)
    this.letGo()
  }

  private awake(): void {
    clearTimeout(this.resting)
    this.resting = 0
  }

  private letGo(): void {
    this.awake()
    this.stroke = null
    this.from = null
    this.panning = false
    underway.value = null
    touched.value = none
  }

  // wheel moves over the draft, and with the control key zooms. Where there is nothing more
  // to move to, the page scrolls on.
  private readonly wheel = (event: WheelEvent): void => {
    const now = view.value
    if (!now) return
    const { x, y } = this.spot(event)
    const unit = event.deltaMode === 1 ? 16 : 1
    const next = event.ctrlKey
      ? zoomedAt(now, now.cell * Math.exp((-event.deltaY * unit) / 300), x, y)
      : panned(now, (event.shiftKey ? event.deltaY : event.deltaX) * unit, event.shiftKey ? 0 : event.deltaY * unit)
    if (!event.ctrlKey && next.left === now.left && next.top === now.top) return
    event.preventDefault()
    view.value = next
  }
}

// threadOf is the thread at a ruler, as a place of its list.
const threadOf = (at: Place): Place | null => {
  switch (at.part) {
    case 'ends':
      return { part: 'threading', ...(at.end === undefined ? {} : { end: at.end }), shaft: 1 }
    case 'picks':
      return { part: table.value && table.value.treadling.lo.length > 0 ? 'treadling' : 'lifts', ...(at.pick === undefined ? {} : { pick: at.pick }), treadle: 1, shaft: 1 }
  }
  return null
}
