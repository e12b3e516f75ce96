import { signal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { ask } from '../ask'
import { heard } from '../heard'
import { Select, Text, TickBox } from '../inputs'
import { keep, kept } from '../keep'
import type { Problem, Saved } from '../kinds'
import { go } from '../place'
import { ProblemList } from '../problems'
import { said } from '../state'
import { windowId } from '../window'
import { words } from '../words'
import type { Reading } from './kinds'
import { Known } from './known'
import { emptyForm, nameOf, saysSomething, setsOf, type Way, type YarnForm } from './yarn_form'

const s = words.shelf

// adding tells whether the form is open. What is typed in it is kept through a reload.
export const adding = signal(false)
const form = signal<YarnForm>(kept('yarn-form', emptyForm))
form.subscribe((value) => keep('yarn-form', value))

const reading = signal<Reading | null>(null)
const refused = signal<Problem[]>([])

function say(more: Partial<YarnForm>): void {
  form.value = { ...form.value, ...more }
  refused.value = []
  void read()
}

// One question is on its way at a time, as for numbers.
let asking = false
let again = false

async function read(): Promise<void> {
  again = true
  if (asking) return
  asking = true
  while (again) {
    again = false
    const now = form.value
    if (!saysSomething(now)) {
      reading.value = null
      continue
    }
    const answer = await ask<Reading>('/api/yarns/read', { text: now.way === 'label' ? now.text : '', set: setsOf(now) })
    if (heard(answer)) reading.value = answer.value
  }
  asking = false
}

async function add(): Promise<void> {
  const now = form.value
  const known = reading.value
  const name = nameOf(now, known?.name ?? '')
  const answer = await ask<Saved>('/api/yarns', { window: await windowId, name, set: now.way === 'label' ? (known?.set ?? []) : setsOf(now) })
  if (answer.is === 'problems') {
    refused.value = answer.problems
    return
  }
  if (!heard(answer)) return
  form.value = { ...emptyForm, way: now.way }
  reading.value = null
  adding.value = false
  go({ page: 'yarn', id: answer.value.id })
  said.value = words.savedName(name)
}

const ways: Way[] = ['label', 'skein', 'wraps']

// AddYarn puts a yarn on the shelf. What is understood stands beside what is typed.
export function AddYarn({ alone }: { alone: boolean }) {
  const top = useRef<HTMLFormElement>(null)
  useEffect(() => {
    void read()
    if (!alone) top.current?.querySelector('input')?.focus()
  }, [])
  const now = form.value
  return (
    <form
      ref={top}
      class="columns adding"
      aria-label={s.addYarn}
      onSubmit={(event) => {
        event.preventDefault()
        void add()
      }}
    >
      <div>
        <fieldset class="ticks">
          <legend>{s.ways}</legend>
          {ways.map((way) => (
            <label key={way}>
              <input type="radio" name="way" checked={now.way === way} onChange={() => say({ way })} /> {s.way[way]}
            </label>
          ))}
        </fieldset>
        {now.way === 'label' ? <LabelFields /> : <MeasuredFields />}
        <p class="buttons">
          <button type="submit" class="strong">
            {s.putOnShelf}
          </button>
          {alone || (
            <button type="button" class="plain" onClick={() => (adding.value = false)}>
              {words.close}
            </button>
          )}
        </p>
      </div>
      <Understood />
    </form>
  )
}

function LabelFields() {
  const now = form.value
  return (
    <div class="fields">
      <Text id="label" class="wide" label={s.label} hint={s.labelHint} placeholder="8/2 cotton, harbour blue" value={now.text} set={(text) => say({ text })} />
      <Text id="yarn-name" class="wide" label={s.name} hint={s.nameHint} placeholder={reading.value?.name} value={now.name} set={(name) => say({ name })} />
    </div>
  )
}

function MeasuredFields() {
  const now = form.value
  return (
    <div class="fields">
      <Text id="yarn-name" class="wide" label={s.name} placeholder="handspun, grey ewe" value={now.name} set={(name) => say({ name })} />
      <Text id="yarn-fibre" label={words.warp.fibre} placeholder="wool" value={now.fibre} set={(fibre) => say({ fibre })} />
      <Text id="yarn-colour" label={words.warp.colour} placeholder="grey #8d8a84" value={now.colour} set={(colour) => say({ colour })} />
      {now.way === 'skein' ? <SkeinFields /> : <WrapFields />}
    </div>
  )
}

function SkeinFields() {
  const now = form.value
  return (
    <>
      <Text id="skein-length" label={s.skeinLength} placeholder="10 yd" value={now.length} set={(length) => say({ length })} />
      <Text id="skein-weight" label={s.skeinWeight} placeholder="5 g" value={now.weight} set={(weight) => say({ weight })} />
      <Text id="skein-many" label={s.skeins} placeholder="1" number value={now.skeins} set={(skeins) => say({ skeins })} />
      <TickBox id="skein-relaxed" label={s.relaxed} value={now.relaxed} set={(relaxed) => say({ relaxed })} />
      <TickBox id="skein-scoured" label={s.scoured} value={now.scoured} set={(scoured) => say({ scoured })} />
      <TickBox id="skein-handspun" label={s.handspun} value={now.handspun} set={(handspun) => say({ handspun })} />
    </>
  )
}

function WrapFields() {
  const now = form.value
  return (
    <>
      <Text id="wraps" label={s.wrapsCounted} number placeholder="22" value={now.wraps} set={(wraps) => say({ wraps })} />
      <Text id="wraps-over" label={s.wrapsOver} placeholder="1 in" value={now.over} set={(over) => say({ over })} />
      <Select id="wraps-kind" label={s.wrapsKind} value={now.kind} choices={s.wrapKinds} set={(kind) => say({ kind })} />
    </>
  )
}

function Understood() {
  const now = reading.value
  const wrong = [...refused.value, ...(now?.problems ?? [])].filter((p, i, all) => all.findIndex((q) => q.code === p.code && q.path === p.path) === i)
  return (
    <section class="answers" aria-label={s.understood}>
      <h2>{s.understood}</h2>
      <div class="cares" role="status">
        <ProblemList of={wrong} />
      </div>
      {now && now.figures.length > 0 ? <Known of={now.figures} /> : <p class="soft">{s.understoodNone[form.value.way]}</p>}
    </section>
  )
}
