import { Select } from '../inputs'
import { words } from '../words'
import type { Loom } from './kinds'
import { Logged } from './logging'
import { doneOf, tellLoom, view } from './state'

const w = words.loomside

// Steps lists what there is to do, each with how far it is; the next is the strong one.
export function Steps({ now }: { now: Loom }) {
  const dressed = now.steps.every((step) => doneOf(now, step.id) >= step.total)
  const next = now.steps.find((step) => doneOf(now, step.id) < step.total)
  const woven = doneOf(now, 'weaving')
  return (
    <div class="loom-body">
      <h2>{w.steps}</h2>
      <ol class="loom-steps" role="list">
        {now.steps.map((step) => (
          <Row key={step.id} id={step.id} says={step.says} done={doneOf(now, step.id)} total={step.total} unit={step.unit} next={step === next && woven === 0} />
        ))}
        {now.weaving && <Row id="weaving" says={w.weave} done={woven} total={now.weaving.total} unit={w.picks} next={dressed || woven > 0} />}
      </ol>
      <Select id="loom-way" class="wide" label={w.way} value={now.way} choices={now.ways.map((way) => [way.id, way.says])} set={(to) => tellLoom('chosen', { what: 'way', value: to })} />
      <Logged id={now.id} place={woven} />
    </div>
  )
}

type RowProps = { id: string; says: string; done: number; total: number; unit: string; next: boolean }

function Row({ id, says, done, total, unit, next }: RowProps) {
  const standing = done >= total ? 'done' : next ? 'now' : ''
  return (
    <li class={standing}>
      <button type="button" class={next ? 'strong' : 'plain'} onClick={() => (view.value = id)}>
        <span class="loom-step-name">{says}</span> <span class="loom-step-count">{w.count(done, total, unit)}</span>
      </button>
    </li>
  )
}
