import { useSignal } from '@preact/signals'
import { doc } from '../doc'
import { Field, Group } from '../field'
import { Set } from '../figure'
import { Select, Text } from '../inputs'
import { LearntLines } from '../lines'
import { LogList } from '../loomside/log_list'
import { refresh } from '../refresh'
import { words } from '../words'
import { tell } from './ask'
import { record, type Size } from './record'

const w = words.warp

// Finish holds measured sizes beside the planned ones, and what they say.
export function Finish() {
  const now = doc.value
  const all = record.value
  if (!now) return null
  if (!all) return <p class="soft">{words.reading}</p>
  return (
    <div class="columns">
      <div>
        <Group title={w.finishTitle} says={w.finishSays}>
          <p class="aside">{w.hot}</p>
          {all.sizes.map((size) => (
            <SizeTable key={size.path} size={size} />
          ))}
          <Measure id={now.id} sizes={all.sizes} />
        </Group>
        <Group title={w.note}>
          <Field path="note" label={w.note} wide />
          {now.started && (
            <p class="buttons">
              <button type="button" class="plain" onClick={() => void finished(now.id)}>
                {w.finished}
              </button>
              <span class="soft">{w.finishedSays}</span>
            </p>
          )}
        </Group>
      </div>
      <div class="answers">
        <Learnt />
        <section class="loomside-log">
          <h2>{words.loomsideLog.title}</h2>
          <LogList id={now.id} />
        </section>
      </div>
    </div>
  )
}

async function finished(id: number): Promise<void> {
  await tell(id, 'log', { what: 'finished', note: '' })
  await refresh()
}

function SizeTable({ size }: { size: Size }) {
  return (
    <table class="sizes">
      <caption>{size.says}</caption>
      <thead>
        <tr>
          <th scope="col">{w.state}</th>
          <th scope="col">{w.planned}</th>
          <th scope="col">{w.measured}</th>
        </tr>
      </thead>
      <tbody>
        {size.states.map((state) => (
          <tr key={state.state}>
            <th scope="row">{state.says}</th>
            <td>{state.planned ? <Set text={state.planned} /> : ''}</td>
            <td>{state.measured ? <Set text={state.measured} /> : ''}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

// Measure writes one size down.
function Measure({ id, sizes }: { id: number; sizes: Size[] }) {
  const path = useSignal(sizes[0]?.path ?? '')
  const state = useSignal('finished')
  const typed = useSignal('')
  const of = sizes.find((size) => size.path === path.value)
  const known = of?.states.some((s) => s.state === state.value) ? state.value : (of?.states[0]?.state ?? '')
  const send = async () => {
    if (await tell(id, 'measurements', { path: path.value, state: known, typed: typed.value })) typed.value = ''
    await refresh()
  }
  if (!of) return null
  return (
    <form
      class="fields"
      onSubmit={(event) => {
        event.preventDefault()
        void send()
      }}
    >
      <Select id="size-what" label={w.what} value={path.value} choices={sizes.map((s) => [s.path, s.says])} set={(to) => (path.value = to)} />
      <Select id="size-state" label={w.state} value={known} choices={of.states.map((s) => [s.state, s.says])} set={(to) => (state.value = to)} />
      <Text id="size" label={w.size} placeholder="28 1/4 in" value={typed.value} set={(to) => (typed.value = to)} />
      <p class="field act">
        <button type="submit" class="strong">
          {w.enter}
        </button>
      </p>
    </form>
  )
}

function Learnt() {
  const all = record.value?.learnt ?? []
  return (
    <section>
      <h2>{w.learnt}</h2>
      {all.length === 0 ? <p class="soft">{w.learntNone}</p> : <p class="soft">{w.learntSays}</p>}
      <LearntLines of={all} />
    </section>
  )
}
