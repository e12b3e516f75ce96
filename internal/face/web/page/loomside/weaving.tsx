import { useEffect } from 'preact/hooks'
import { Set } from '../figure'
import { words } from '../words'
import { Foretold } from './foretold'
import { Logged } from './logging'
import type { Kind, Loom, Press, Weaving, Yarn } from './kinds'
import { doneOf } from './state'
import { back, go, pickAloud } from './stroke'
import { motifAt, stretchAt, tapeAt, type Where, whereIs } from './where'

const w = words.loomside

// WeaveView is the pick that comes: what is pressed, thrown and on top, and where it is.
export function WeaveView({ now, weaving }: { now: Loom; weaving: Weaving }) {
  const woven = doneOf(now, 'weaving')
  const at = whereIs(weaving, woven)
  useEffect(() => pickAloud(now, woven), [])
  if (!at) return null
  const finished = woven >= weaving.total
  return (
    <section class="loom-body" aria-label={w.weave}>
      <p class="loom-over">
        <b>{at.piece.says}</b> <span class="loom-sum">{w.count(woven, weaving.total, w.picks)}</span>
      </p>
      {finished ? <Off at={at} /> : <Pick weaving={weaving} at={at} />}
      <p class="loom-buttons">
        <button type="button" class="plain loom-back" onClick={() => void back()}>
          {w.unweave}
        </button>
        {!finished && (
          <button type="button" class="strong loom-go" onClick={() => void go()}>
            {w.woven}
          </button>
        )}
      </p>
      <Foretold now={now} weaving={weaving} at={at} woven={woven} />
      <Logged id={now.id} place={woven} />
    </section>
  )
}

// Off is what is done after the last pick of the warp.
function Off({ at }: { at: Where }) {
  return (
    <>
      <p class="loom-now">
        <strong class="loom-word loom-done">{w.allWoven}</strong>
      </p>
      <Notes list={at.piece.last} />
    </>
  )
}

function Notes({ list }: { list: string[] }) {
  if (list.length === 0) return null
  return (
    <ul class="loom-check care" role="list">
      {list.map((one) => (
        <li key={one}>
          <Set text={one} />
        </li>
      ))}
    </ul>
  )
}

function Pick({ weaving, at }: { weaving: Weaving; at: Where }) {
  const press = weaving.presses[at.kind.presses[at.in] ?? -1]
  const before = at.number > 0 && at.in === 0 ? weaving.pieces[at.number - 1]?.last ?? [] : []
  return (
    <>
      <Notes list={at.in === 0 ? [...before, ...at.piece.first] : []} />
      <p class="loom-where">
        <span>{stretchAt(at.kind, at.in)}</span> <span>{w.pickOf(at.in + 1, at.kind.picks)}</span> <MotifWords kind={at.kind} at={at.in} />
      </p>
      <div class="loom-pick">
        {press && (
          <div>
            <p class="loom-now">
              <span class="loom-what">{weaving.treadled ? w.treadle(press.treadles.length) : w.lift}</span> <strong class="loom-figure">{press.text}</strong>
            </p>
            <Feet weaving={weaving} press={press} />
          </div>
        )}
        <div>
          {press && weaving.treadled && <p class="loom-top-says">{w.onTop(press.up_says)}</p>}
          <Shuttle weaving={weaving} at={at} />
          <Tape at={at} />
          <Coming weaving={weaving} at={at} />
        </div>
      </div>
    </>
  )
}

function MotifWords({ kind, at }: { kind: Kind; at: number }) {
  const motif = motifAt(kind, at)
  return motif ? <span>{w.motif(motif.motif, kind.motif.times, motif.pick, kind.motif.picks)}</span> : null
}

// Feet draws the treadles as they lie under the feet, or the levers of a table loom, with
// what is pressed filled.
function Feet({ weaving, press }: { weaving: Weaving; press: Press }) {
  const n = weaving.treadled ? weaving.treadles : weaving.shafts
  if (n > 16) return null
  const pressed = weaving.treadled ? press.treadles : press.up
  return (
    <svg class="loom-feet" preserveAspectRatio="xMinYMid" viewBox={`0 0 ${n * 24} 48`} aria-hidden="true">
      {Array.from({ length: n }, (_, i) => (
        <rect key={i} class={pressed.includes(i + 1) ? 'pressed' : ''} x={i * 24 + 3} y={pressed.includes(i + 1) ? 8 : 2} width="18" height="38" rx="2" />
      ))}
    </svg>
  )
}

function Shuttle({ weaving, at }: { weaving: Weaving; at: Where }) {
  const number = at.kind.weft[at.in] ?? 0
  const yarn = weaving.yarns[number]
  if (!yarn) return null
  const changes = at.in > 0 && at.kind.weft[at.in - 1] !== number
  return (
    <p class={changes ? 'loom-shuttle loom-changes' : 'loom-shuttle'}>
      <Swatch yarn={yarn} /> <b>{yarn.name}</b> {w.shuttle(Boolean(at.kind.from_right[at.in]))}
      {changes && <span> {w.changes}</span>}
    </p>
  )
}

const Swatch = ({ yarn }: { yarn: Yarn }) => (
  <svg class="loom-swatch" viewBox="0 0 10 10" aria-hidden="true">
    <rect width="10" height="10" fill={yarn.colour ?? '#d9cdb8'} />
  </svg>
)

function Tape({ at }: { at: Where }) {
  const says = tapeAt(at.kind, at.in)
  return says ? (
    <p class="loom-tape">
      {w.tapeShould} <Set text={says} />
    </p>
  ) : null
}

// comingPicks is how many picks after this one are shown.
const comingPicks = 4

function Coming({ weaving, at }: { weaving: Weaving; at: Where }) {
  const picks = Array.from({ length: comingPicks }, (_, i) => at.in + 1 + i).filter((i) => i < at.kind.picks)
  if (picks.length === 0 || at.kind.presses.length === 0) return null
  return (
    <p class="loom-coming">
      {w.coming}{' '}
      {picks.map((i) => {
        const press = weaving.presses[at.kind.presses[i] ?? -1]
        const yarn = weaving.yarns[at.kind.weft[i] ?? 0]
        return (
          <span key={i}>
            {weaving.yarns.length > 1 && yarn && <Swatch yarn={yarn} />} {press?.text}
          </span>
        )
      })}
    </p>
  )
}
