import { useSignal } from '@preact/signals'
import type { Problem } from '../kinds'
import { FigureLines } from '../lines'
import { ProblemList, Problems } from '../problems'
import { words } from '../words'
import { drawn, facts, putOnShelf, setValue, values, wrong } from './catalogue'
import { ParamField } from './param_field'
import type { Weave } from './weave'

const w = words.draft

// Looked is one weave of the catalogue: its numbers, and what comes of them.
export function Looked({ weave }: { weave: Weave }) {
  return (
    <div class="looked">
      <p>{weave.says}</p>
      {weave.use && (
        <p class="soft">
          {w.use} {weave.use}
        </p>
      )}
      <div class="looked-columns">
        <div>
          <h2 class="small-head">{w.asks}</h2>
          {weave.params.length === 0 && <p class="soft">{w.asksNone}</p>}
          {weave.params.map((param) => (
            <ParamField key={param.name} of={param} value={values.value[param.name]} set={(to) => setValue(param, to)} wrong={wrong.value} />
          ))}
          <ProblemList of={elsewhere(weave)} />
          <Shelf weave={weave} />
        </div>
        <Pictures weave={weave} />
      </div>
      <h2 class="small-head">{w.facts}</h2>
      {wrong.value.length > 0 && <p class="care">{w.oldFacts}</p>}
      <FigureLines of={facts.value} />
      <p class="soft">
        {w.source}: {weave.source}
      </p>
    </div>
  )
}

// elsewhere are problems that stand beside no number.
const elsewhere = (weave: Weave): Problem[] => wrong.value.filter((p) => p.path !== 'name' && !weave.params.some((param) => param.name === p.path))

function Pictures({ weave }: { weave: Weave }) {
  const query = drawn.value ? `?${drawn.value}` : ''
  return (
    <div class="looked-pictures">
      <img class="draft" src={`/api/weaves/${weave.id}/picture${query}`} alt={w.weaveAlt(weave.name)} />
      <img class="cloth-sample" src={`/api/weaves/${weave.id}/cloth${query}`} alt={w.weaveCloth(weave.name)} width="240" height="240" />
    </div>
  )
}

// Shelf puts what comes of it on the shelf.
function Shelf({ weave }: { weave: Weave }) {
  const name = useSignal(weave.name)
  return (
    <form
      class="put-on-shelf"
      onSubmit={(event) => {
        event.preventDefault()
        void putOnShelf(name.value.trim())
      }}
    >
      <div class="field">
        <label for="shelf-name">{w.onShelf}</label>
        <input id="shelf-name" type="text" autocomplete="off" value={name.value} onInput={(event) => (name.value = event.currentTarget.value)} />
        <Problems of={wrong.value.filter((p) => p.path === 'name')} />
      </div>
      <button type="submit" class="strong">
        {w.put}
      </button>
    </form>
  )
}
