import { doc, numbers, valueAt } from '../doc'
import { Choice, Field, Group, setNow } from '../field'
import { textOf } from '../tree'
import { words } from '../words'
import { weaves } from '../words/weaves'
import { Drafting } from './drafting'
import { Sett } from './sett'
import { Stripes } from './stripes'
import { Strip } from './strip'
import { Yarns, yarnChoices } from './yarns'

const w = words.warp

// Cloth is which yarns, which weave, how close, in which colours; beside it, the cloth.
export function Cloth() {
  return (
    <>
      <Strip />
      <div class="columns">
        <div>
          <Yarns />
          <Close />
          <Group title={w.stripes} says={w.stripesHint}>
            <Choice path="warp.yarn" label={w.warpYarn} choices={yarnChoices()} none={w.yarnNone} />
            <Stripes path="warp.stripes" label={w.stripes} total={w.ribbonOf} />
          </Group>
          <Weft />
          <Edges />
        </div>
        <div class="answers sticky">
          <Picture />
          <Sett />
          <Drafting />
        </div>
      </div>
    </>
  )
}

function Close() {
  return (
    <Group title={w.sett}>
      <div class="fields">
        <Field path="warp.sett" label={w.sett} hint={w.settHint} />
        <Field path="weft.picks" label={w.picks} hint={w.picksHint} />
        <Choice path="weave" label={w.weave} choices={weaves} none={w.weaveNone} />
      </div>
    </Group>
  )
}

function Weft() {
  const used = ['slack', 'turn', 'reserve', 'tail', 'hemstitch', 'bobbin', 'bobbin-end'].some((key) => (valueAt(`weft.${key}`) ?? null) !== null)
  return (
    <Group title={w.weft}>
      <Choice path="weft.yarn" label={w.weftYarn} choices={yarnChoices()} none={w.warpYarn} />
      <Stripes path="weft.order" label={w.weftOrder} total={w.picksOf} />
      <details open={used}>
        <summary>{w.moreWeft}</summary>
        <div class="fields">
          <Field path="weft.slack" label={w.slack} />
          <Field path="weft.turn" label={w.turn} />
          <Field path="weft.reserve" label={w.reserve} />
          <Field path="weft.tail" label={w.tail} />
          <Field path="weft.hemstitch" label={w.hemstitch} number />
          <Field path="weft.bobbin" label={w.bobbin} />
          <Field path="weft.bobbin-end" label={w.bobbinEnd} />
        </div>
      </details>
    </Group>
  )
}

function Edges() {
  return (
    <Group title={w.edges}>
      <div class="fields">
        <Field path="warp.floating-selvedges" label={w.floats} hint={w.floatsHint} number />
        <Field path="warp.doubled-edges" label={w.doubled} number />
      </div>
    </Group>
  )
}

// Picture is the cloth as it will look, of what was saved last.
function Picture() {
  const now = doc.value
  if (!now) return null
  const yarns = numbers.value?.yarns ?? []
  return (
    <section>
      <h2>{w.cloth}</h2>
      <img class="cloth-large" src={`/api/documents/${now.id}/picture?of=cloth&v=${now.version}`} alt={w.clothAlt(now.name)} width="480" height="480" />
      <ul class="swatches" role="list">
        {yarns.map((yarn) => (
          <li key={yarn.name}>
            <span class="swatch" style={{ background: yarn.colour }} /> {yarn.name}
          </li>
        ))}
      </ul>
    </section>
  )
}

export function Take({ path, value, says }: { path: string; value: string; says: string }) {
  if (textOf(valueAt(path)) === value) return null
  return (
    <button type="button" class="link" onClick={() => setNow(path, value)}>
      {says}
    </button>
  )
}

