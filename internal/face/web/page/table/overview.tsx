import { effect } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { words } from '../words'
import { clock } from './clock'
import { lookNow } from './look_now'
import { overviewOf } from './paint'
import { broughtTo, shownIn } from './rulers'
import { table } from './session'
import { arrangement, cells, seeing, view } from './sight'
import { inSlices } from './slices'
import { putPixels, type Ink } from './surface'

// most is how many dots the picture of all of it has each way, and rest how long a draft is
// left alone before it is drawn anew, in ms.
const most = 240
const rest = 250

// Overview is a small picture of all of the cloth, with what is in sight of it. A press on it
// goes there; by keys the draft itself is gone over.
export function Overview() {
  const box = useRef<HTMLDivElement>(null)
  const canvas = useRef<HTMLCanvasElement>(null)
  useEffect(() => (box.current && canvas.current ? kept(box.current, canvas.current) : undefined), [])
  const now = view.value
  const shown = now && shownIn(now)
  const all = !shown || (shown.w >= 1 && shown.h >= 1)
  const share = (v: number): string => `${Math.max(0, Math.min(v, 1)) * 100}%`
  return (
    <section class={`overview ${all ? 'hidden' : ''}`} aria-hidden="true">
      <h2 class="lesser">{words.table.overview}</h2>
      <div
        ref={box}
        class="overview-box draft-tokens"
        onPointerDown={(event) => {
          const r = event.currentTarget.getBoundingClientRect()
          if (now) view.value = broughtTo(now, (event.clientX - r.left) / r.width, (event.clientY - r.top) / r.height)
        }}
      >
        <canvas ref={canvas} />
        {shown && <span class="in-sight" style={{ left: share(shown.x), top: share(shown.y), width: share(shown.w), height: share(shown.h) }} />}
      </div>
    </section>
  )
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
    stop = inSlices(clock, overviewOf(of, now, lookNow(box), most, most), ({ w, h, pixels }) => {
      canvas.width = w
      canvas.height = h
      putPixels(ink as unknown as Ink, pixels, w)
    })
  }
  const end = effect(() => {
    void [table.value, cells.value, seeing.value, arrangement.value, view.value === null]
    clearTimeout(timer)
    timer = window.setTimeout(draw, rest)
  })
  return () => {
    end()
    stop()
    clearTimeout(timer)
  }
}
