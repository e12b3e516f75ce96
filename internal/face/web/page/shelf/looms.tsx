import { signal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { ask } from '../ask'
import { Figures } from '../card'
import { heard } from '../heard'
import { Select, Text } from '../inputs'
import { keep, kept } from '../keep'
import type { Card, Problem, Saved } from '../kinds'
import { Link } from '../link'
import { go } from '../place'
import { ProblemList } from '../problems'
import { More, Search } from '../search'
import { said } from '../state'
import { windowId } from '../window'
import { words } from '../words'
import { sheds } from './loom_fields'
import { type LoomForm, emptyLoom, loomSets } from './loom_form'
import { looms } from './read'

const s = words.shelf

export const addingLoom = signal(false)
const form = signal<LoomForm>(kept('loom-form', emptyLoom))
form.subscribe((value) => keep('loom-form', value))
const refused = signal<Problem[]>([])

// LoomsPage are the looms, each with its figures.
export function LoomsPage() {
  const { items, total, query } = looms
  const empty = items.value !== null && total.value === 0 && !query.value.words
  return (
    <>
      <div class="title-row">
        <h1>{s.looms}</h1>
        {!addingLoom.value && !empty && (
          <button type="button" class="strong" onClick={() => (addingLoom.value = true)}>
            {s.addLoom}
          </button>
        )}
      </div>
      {empty && <p>{s.loomsEmpty}</p>}
      {(addingLoom.value || empty) && <AddLoom alone={empty} />}
      {empty || (
        <>
          <Search list={looms} found={s.loomsFound} foundFor={s.loomsFoundFor} label={s.searchLooms} />
          <LoomList />
          <More list={looms} />
        </>
      )}
    </>
  )
}

function LoomList() {
  const all = looms.items.value
  if (all === null) return <p class="soft">{words.reading}</p>
  if (all.length === 0) {
    return (
      <p class="none">
        {s.noLoom(looms.query.value.words ?? '')}{' '}
        <button type="button" class="link" onClick={() => looms.find({})}>
          {s.allLooms}
        </button>
      </p>
    )
  }
  return (
    <ol class="loom-list" role="list">
      {all.map((loom) => (
        <LoomItem key={loom.id} loom={loom} />
      ))}
    </ol>
  )
}

function LoomItem({ loom }: { loom: Card }) {
  return (
    <li>
      <h2>
        <Link to={{ page: 'loom', id: loom.id }} class="quiet">
          {loom.name}
        </Link>
      </h2>
      {loom.problems > 0 && <p class="care sentence">{words.problems(loom.problems)}</p>}
      {loom.figures.length > 0 ? <Figures name={loom.name} figures={loom.figures} /> : <p class="soft">{s.loomBare}</p>}
      {loom.demo && <p class="soft">{words.fromDemo}</p>}
    </li>
  )
}

function say(more: Partial<LoomForm>): void {
  form.value = { ...form.value, ...more }
  refused.value = []
}

async function add(): Promise<void> {
  const { name } = form.value
  const answer = await ask<Saved>('/api/looms', { window: await windowId, name, set: loomSets(form.value) })
  if (answer.is === 'problems') {
    refused.value = answer.problems
    return
  }
  if (!heard(answer)) return
  form.value = emptyLoom
  addingLoom.value = false
  go({ page: 'loom', id: answer.value.id })
  said.value = words.savedName(name)
}

function AddLoom({ alone }: { alone: boolean }) {
  const top = useRef<HTMLFormElement>(null)
  useEffect(() => {
    if (!alone) top.current?.querySelector('input')?.focus()
  }, [])
  const now = form.value
  return (
    <form
      ref={top}
      class="adding"
      aria-label={s.addLoom}
      onSubmit={(event) => {
        event.preventDefault()
        void add()
      }}
    >
      <p class="soft">{s.addLoomSays}</p>
      <div class="fields">
        <Text id="loom-name" label={s.name} placeholder="countermarch, 120 cm" value={now.name} set={(name) => say({ name })} />
        <Text id="loom-width" label={s.weavingWidth} placeholder="120 cm" value={now.width} set={(width) => say({ width })} />
        <Text id="loom-shafts" label={s.shafts} number placeholder="8" value={now.shafts} set={(shafts) => say({ shafts })} />
        <Text id="loom-treadles" label={s.treadles} number placeholder="10" value={now.treadles} set={(treadles) => say({ treadles })} />
        <Select id="loom-shed" label={s.shed} value={now.shed} none={s.unsaid} choices={sheds} set={(shed) => say({ shed })} />
      </div>
      <div class="cares" role="status">
        <ProblemList of={refused.value} />
      </div>
      <p class="buttons">
        <button type="submit" class="strong">
          {s.addThisLoom}
        </button>
        {alone || (
          <button type="button" class="plain" onClick={() => (addingLoom.value = false)}>
            {words.close}
          </button>
        )}
      </p>
    </form>
  )
}
