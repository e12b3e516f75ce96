import { signal, useSignal } from '@preact/signals'
import { ask } from '../ask'
import { readWeaves, weaves } from '../drafts/catalogue'
import { changes, type Change } from '../drafts/open'
import { ParamField } from '../drafts/param_field'
import { heard } from '../heard'
import { Select, Text } from '../inputs'
import type { Problem } from '../kinds'
import { ProblemList } from '../problems'
import { words } from '../words'
import { picksOf } from './cloth'
import { stretchOf } from './cursor'
import { dyeNames, hasTable, palette } from './facts'
import { show } from './keys'
import { type AnyAct, draw, fixed, table, tryOut, uncoloured } from './session'
import { chosen, cursor, underway, view } from './sight'
import { endNumbered } from './view'

const w = words.table

// Go brings an end or a pick of a number in sight.
export function Go() {
  const typed = useSignal('')
  const go = (what: 'end' | 'pick'): void => {
    const [of, now] = [table.value, view.value]
    const n = Number.parseInt(typed.value, 10)
    if (!of || !now || !(n >= 1)) return
    const at = what === 'end' ? { end: Math.min(endNumbered(now.sight, n), of.threading.length - 1), pick: cursor.value?.pick ?? 0 } : { end: cursor.value?.end ?? 0, pick: Math.min(n, picksOf(of)) - 1 }
    show({ part: 'drawdown', ...at })
    document.querySelector<HTMLElement>('.draft-table')?.focus()
  }
  return (
    <form
      class="go-to"
      onSubmit={(event) => {
        event.preventDefault()
        go('end')
      }}
    >
      <label for="go-number">{w.goTo}</label>
      <input id="go-number" type="text" inputMode="numeric" autocomplete="off" size={5} value={typed.value} onInput={(event) => (typed.value = event.currentTarget.value)} />
      <button type="submit" class="plain">
        {w.goEnd}
      </button>
      <button type="button" class="plain" onClick={() => go('pick')}>
        {w.goPick}
      </button>
    </form>
  )
}

async function readChanges(): Promise<void> {
  if (changes.value.length > 0) return
  const answer = await ask<Change[]>('/api/changes')
  if (heard(answer)) changes.value = answer.value
}

type System = { id: string; name: string }
const systems = signal<System[]>([])

async function readSystems(): Promise<void> {
  if (systems.value.length > 0) return
  const answer = await ask<System[]>('/api/blocks')
  if (heard(answer)) systems.value = answer.value
}

// Whole is what is made of the whole draft: changes, each with a look at what it would be, and
// weaves of the catalogue in its place or in the place of a stretch of its threading.
export function Whole() {
  return (
    <details
      class="whole"
      onToggle={(event) => {
        if (!event.currentTarget.open) return
        void readChanges()
        void readWeaves()
        void readSystems()
      }}
    >
      <summary>{w.wholeDraft}</summary>
      <Change1 />
      <Begin />
      <Blocks />
    </details>
  )
}

// Try is acts that can be looked at before they are made.
function Try({ acts }: { acts: () => AnyAct[] }) {
  const wrong = useSignal<Problem[]>([])
  const look = async (): Promise<void> => {
    const got = await tryOut(acts())
    wrong.value = Array.isArray(got) ? got : []
    underway.value = got && !Array.isArray(got) ? got : null
  }
  const make = (): void => {
    underway.value = null
    wrong.value = []
    draw(acts())
  }
  return (
    <>
      <p class="buttons">
        <button type="button" class="plain" onClick={() => void look()}>
          {w.lookAt}
        </button>
        {underway.value && (
          <button type="button" class="plain" onClick={() => (underway.value = null)}>
            {w.asItIs}
          </button>
        )}
        <button type="button" class="plain" onClick={make}>
          {w.make}
        </button>
      </p>
      <ProblemList of={wrong.value} />
    </>
  )
}

function Change1() {
  const name = useSignal('turned')
  const value = useSignal('')
  const now = changes.value.find((one) => one.name === name.value)
  if (changes.value.length === 0 || fixed.value) return null
  return (
    <section>
      <h2 class="lesser">{w.change}</h2>
      <div class="fields">
        <Select id="table-change" class="wide" label={w.changeWhat} value={name.value} choices={changes.value.map((one) => [one.name, one.says])} set={(to) => (name.value = to)} />
        {now?.takes && <Text id="table-change-how" label={w.how} placeholder={now.takes} value={value.value} set={(to) => (value.value = to)} />}
      </div>
      <Try acts={() => [{ do: 'change', name: name.value, ...(now?.takes ? { value: value.value || now.takes } : {}) }]} />
    </section>
  )
}

function Begin() {
  const weave = useSignal('')
  const values = useSignal<Record<string, string>>({})
  const all = weaves.value
  const at = stretchOf(chosen.value)
  if (!all || all.length === 0 || fixed.value) return null
  const picked = weave.value || (all[0]?.id ?? '')
  const stretch = at?.part === 'threading' ? { from: at.from, to: at.to } : {}
  return (
    <section>
      <h2 class="lesser">{w.begin}</h2>
      <p class="soft">{at?.part === 'threading' ? w.beginStretch(at.from, at.to) : w.beginSays}</p>
      <div class="fields">
        <Select id="table-weave" class="wide" label={w.weave} value={picked} choices={all.map((one) => [one.id, one.name])} set={(to) => ((weave.value = to), (values.value = {}))} />
        {all.find((one) => one.id === picked)?.params.map((param) => (
          <ParamField key={picked + param.name} of={param} value={values.value[param.name]} set={(to) => (values.value = { ...values.value, [param.name]: to })} wrong={[]} />
        ))}
      </div>
      <Try acts={() => [{ do: 'weave', weave: picked, values: values.value, ...stretch }]} />
    </section>
  )
}

// Blocks writes a profile out into threads.
function Blocks() {
  const system = useSignal('')
  const threading = useSignal('')
  const treadling = useSignal('')
  const feet = useSignal('one')
  const all = systems.value
  const at = stretchOf(chosen.value)
  if (all.length === 0 || fixed.value) return null
  const picked = system.value || (all[0]?.id ?? '')
  const stretch = at?.part === 'threading' ? { from: at.from, to: at.to } : {}
  const more = treadling.value.trim() ? { treadling: treadling.value } : {}
  return (
    <section>
      <h2 class="lesser">{w.blocks}</h2>
      <p class="soft">{w.blocksSays}</p>
      <div class="fields">
        <Select id="table-system" class="wide" label={w.system} value={picked} choices={all.map((one) => [one.id, one.name])} set={(to) => (system.value = to)} />
        <Select id="table-feet" label={w.feet} value={feet.value} choices={w.feetChoices} set={(to) => (feet.value = to)} />
        <Text id="table-blocks" label={w.blocksAcross} placeholder="A B C B" value={threading.value} set={(to) => (threading.value = to)} />
        <Text id="table-blocks-along" label={w.blocksAlong} hint={w.blocksAlongSays} value={treadling.value} set={(to) => (treadling.value = to)} />
      </div>
      <Try acts={() => [{ do: 'blocks', system: picked, threading: threading.value, feet: feet.value, ...more, ...stretch }]} />
    </section>
  )
}

// Dye adds a colour, where colours are the draft's own.
export function AddDye() {
  const hex = useSignal('#25407c')
  if (!hasTable.value || fixed.value || uncoloured.value || dyeNames.value.length > 0) return null
  const n = palette.value.length
  return (
    <p class="buttons">
      <label for="table-dye">{w.dye}</label>
      <input id="table-dye" type="color" class="dye" value={hex.value} onInput={(event) => (hex.value = event.currentTarget.value)} />
      <button type="button" class="plain" onClick={() => draw([{ do: 'put', part: 'palette', at: n, remove: 0, put: [hex.value] }], { palette: { at: n, remove: 0, put: [hex.value] } })}>
        {w.addDye}
      </button>
    </p>
  )
}
