import { doc } from '../doc'
import { Field, Group } from '../field'
import { Set } from '../figure'
import { LearntLines } from '../lines'
import { LogList } from '../loomside/log_list'
import { refresh } from '../refresh'
import { words } from '../words'
import { tell } from './ask'
import { FinishSteps } from './finish_steps'
import { LabelText } from './label'
import { Measure } from './measure'
import { record, type Size } from './record'
import { Weighed } from './weighed'

const w = words.warp

// Finish has the steps after the last pick, measured sizes beside the planned ones, what
// they say, and the label.
export function Finish() {
  const now = doc.value
  const all = record.value
  if (!now) return null
  if (!all) return <p class="soft">{words.reading}</p>
  return (
    <div class="columns">
      <div>
        <FinishSteps id={now.id} />
        <Group title={w.finishTitle} says={w.finishSays}>
          {all.sizes.map((size) => (
            <SizeTable key={size.path} size={size} />
          ))}
          <Measure id={now.id} sizes={all.sizes} />
        </Group>
        <Weighed />
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
        <LabelText />
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
