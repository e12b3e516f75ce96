import { computed, effect } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { words } from '../words'
import { clock } from './clock'
import { again } from './again'
import type { Table } from './cloth'
import type { Look } from './look'
import { lookNow } from './look_now'
import { overviewOf } from './paint'
import { broughtTo, shownIn } from './rulers'
import { table } from './session'
import { arrangement, seeing, view } from './sight'
import { inSlices } from './slices'
import { putPixels, type Ink } from './surface'
import { extentOf, type View, viewOf } from './view'

// most is how many dots the picture of all of it has each way, and rest how long a draft is
// left alone before it is drawn anew, in ms.
const most = 240
const rest = 250

// cloth is how many threads each way a draft is shown by that is all in sight.
const cloth = 60

// Overview is a small picture of all of the cloth, with what is in sight of it: a press on it
// goes there; by keys the draft itself is gone over. A draft that is all in sight is shown as
// the cloth that it makes, again and again.
export function Overview() {
  const box = useRef<HTMLDivElement>(null)
  const canvas = useRef<HTMLCanvasElement>(null)
  useEffect(() => (box.current && canvas.current ? kept(box.current, canvas.current) : undefined), [])
  return (
    <section class="overview" aria-hidden="true">
      <h2 class="lesser">{allShown.value ? words.table.cloth : words.table.overview}</h2>
      <div
        ref={box}
        class="overview-box draft-tokens"
        onPointerDown={(event) => {
          const r = event.currentTarget.getBoundingClientRect()
          const now = view.peek()
          if (now && !allShown.peek()) view.value = broughtTo(now, (event.clientX - r.left) / r.width, (event.clientY - r.top) / r.height)
        }}
      >
        <canvas ref={canvas} />
        {!allShown.value && <InSight />}
      </div>
    </section>
  )
}

const allShown = computed(() => {
  const shown = view.value && shownIn(view.value)
  return !shown || (shown.w >= 1 && shown.h >= 1)
})

// InSight is a frame around what is in sight. It is moved and not laid out anew, as the sight
// moves with every turn of a wheel.
function InSight() {
  const shown = view.value && shownIn(view.value)
  if (!shown) return null
  const share = (v: number): string => `${Math.max(0, Math.min(v, 1)) * 100}%`
  const move = (at: number, long: number): string => `${(Math.max(0, Math.min(at, 1)) / Math.max(long, 1e-6)) * 100}%`
  const [w, h] = [Math.min(shown.w, 1), Math.min(shown.h, 1)]
  return <span class="in-sight" style={{ width: share(w), height: share(h), transform: `translate(${move(shown.x, w)}, ${move(shown.y, h)})` }} />
}

// kept draws the picture whenever the draft has changed and is then left alone.
function kept(box: HTMLElement, canvas: HTMLCanvasElement): () => void {
  let timer = 0
  let stop = (): void => {}
  const draw = (): void => {
    const [of, now] = [table.peek(), view.peek()]
    const ink = canvas.getContext('2d')
    if (!of || !now || !ink) return
    stop()
    const [shown, seen] = allShown.peek() ? madeOf(of, now) : [of, now]
    const look: Look = of.palette.length > 0 ? { ...lookNow(box), cells: 'colours' } : lookNow(box)
    stop = inSlices(clock, overviewOf(shown, seen, look, most, most), ({ w, h, pixels }) => {
      if (canvas.width !== w) canvas.width = w
      if (canvas.height !== h) canvas.height = h
      putPixels(ink as unknown as Ink, pixels, w)
    })
  }
  const end = effect(() => {
    void [table.value, seeing.value, arrangement.value, allShown.value, view.value === null]
    clearTimeout(timer)
    timer = window.setTimeout(draw, rest)
  })
  return () => {
    end()
    stop()
    clearTimeout(timer)
  }
}

// madeOf is the cloth that a draft makes, seen from the same side.
function madeOf(of: Table, { sight, cell }: View): [Table, View] {
  const made = again(of, cloth)
  return [made, viewOf({ ...sight, extent: extentOf(made), sized: null }, cell)]
}
