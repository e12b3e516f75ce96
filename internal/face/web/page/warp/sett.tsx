import { numbers } from '../doc'
import { Set } from '../figure'
import type { Advice, Band } from '../kinds_doc'
import { words } from '../words'
import { Take } from './cloth'

const w = words.warp

// Sett shows what the rules advise as bands over one scale, with the weaver's sett across.
export function Sett() {
  const now = numbers.value
  if (!now) return null
  const advice = now.sett
  return (
    <section class="advice">
      <h2>{w.advice}</h2>
      {advice && advice.bands.length > 0 ? <Bands of={advice} /> : <p class="soft">{w.adviceNone}</p>}
    </section>
  )
}

// margin is how much of the scale is left free at each side.
const margin = 0.08

type Scale = (value: number) => number

function scaleOf(advice: Advice): Scale {
  const all = advice.bands.flatMap((b) => [b.low, b.high]).concat(advice.exact ?? advice.wanted ?? [])
  const low = Math.min(...all)
  const span = Math.max(...all) - low || 1
  return (value) => 100 * (margin + ((1 - 2 * margin) * (value - low)) / span)
}

function Bands({ of }: { of: Advice }) {
  const scale = scaleOf(of)
  const own = of.exact ?? of.wanted
  return (
    <>
      <p class="soft">{w.adviceSays}</p>
      <ul class="bands" role="list">
        {of.bands.map((band) => (
          <BandRow key={band.says} band={band} scale={scale} own={own} />
        ))}
      </ul>
    </>
  )
}

type RowProps = { band: Band; scale: Scale; own: number | undefined }

function BandRow({ band, scale, own }: RowProps) {
  const from = scale(band.low)
  return (
    <li>
      <p class="band-head">
        <span>{band.says}</span>{' '}
        <strong>
          <Set text={band.value} />
        </strong>
      </p>
      <svg class="band" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
        <line x1="0" x2="100" y1="3" y2="3" class="scale" />
        <rect x={from} y="1" width={Math.max(0.8, scale(band.high) - from)} height="4" class="range" />
        {own !== undefined && <rect x={scale(own) - 0.3} y="0" width="0.6" height="6" class="own" />}
      </svg>
      <p class="soft">
        {band.source}{' '}
        <Take path="warp.sett" value={band.typed} says={w.useSett(band.typed)} />
      </p>
    </li>
  )
}
