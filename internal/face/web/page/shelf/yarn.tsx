import { doc, valueAt } from '../doc'
import { Field, Group, setNow, Tick } from '../field'
import { Framed } from '../framed'
import { isTable } from '../tree'
import { Colour } from '../warp/yarns'
import { words } from '../words'
import { Known } from './known'
import { shelved } from './read'
import { Samples } from './samples'
import { StockGroup } from './stock'
import { Swatch } from './yarns'

const s = words.shelf
const w = words.warp

// YarnPage is one yarn of the shelf: what is known of it beside what follows.
export function YarnPage() {
  return (
    <Framed kind="yarn">
      <div class="columns">
        <div>
          <What />
          <Measured />
        </div>
        <div class="answers">
          <Follows />
          <StockGroup />
        </div>
      </div>
      <Samples />
    </Framed>
  )
}

function What() {
  const now = doc.value
  if (!now) return null
  return (
    <Group title={s.what}>
      <div class="fields">
        <Field path="count" label={w.yarnCount} hint={w.yarnCountHint} />
        <Field path="fibre" label={w.fibre} hint={w.fibreHint} />
        <Colour path="colour" colour={shelved.value?.colour} name={now.name} />
        <Field path="put-up" label={w.putUp} placeholder="8 oz cone" />
        <Field path="price" label={w.price} hint={s.priceHint} placeholder="12.50 EUR" />
        <Field path="note" label={w.note} wide />
      </div>
    </Group>
  )
}

function Measured() {
  const skein = valueAt('skein')
  return (
    <Group title={s.measuredOf} says={s.measuredSays}>
      <div class="fields">
        <Field path="skein.length" label={s.skeinLength} placeholder="10 yd" />
        <Field path="skein.weight" label={s.skeinWeight} placeholder="5 g" />
        <Field path="skein.skeins" label={s.skeins} number placeholder="1" />
        <Tick path="skein.relaxed" label={s.relaxed} />
        <Tick path="skein.scoured" label={s.scoured} />
        <Tick path="handspun" label={s.handspun} />
      </div>
      {isTable(skein) && (
        <button type="button" class="link" onClick={() => setNow('skein', null)}>
          {s.noSkein}
        </button>
      )}
      <div class="fields">
        <Field path="wraps" label={s.wraps} hint={s.wrapsHint} />
        <Field path="diameter-constant" label={s.constant} hint={s.constantHint} />
      </div>
    </Group>
  )
}

// Follows is what comes of it: the grist, in every system, and how thick that is.
function Follows() {
  const known = shelved.value
  return (
    <section>
      <h2>{s.follows}</h2>
      {known?.colour && <Swatch colour={known.colour} class="band" />}
      {!known ? <p class="soft">{words.reading}</p> : known.known && known.known.length > 0 ? <Known of={known.known} /> : <p class="soft">{s.followsNone}</p>}
    </section>
  )
}
