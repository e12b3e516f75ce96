import type { ComponentChildren } from 'preact'
import { put, save } from './deeds'
import { doc, edit, numbers, valueAt } from './doc'
import type { TermName } from './guide/prose'
import type { Json, Problem } from './kinds'
import { Problems } from './problems'
import { perPath } from './same'
import { Label, Term } from './term'
import { termAt } from './term_at'
import { at, isTable, textOf } from './tree'
import { words } from './words'

// The fields of an open document. Each stands for a path; what is typed in it is saved by
// itself, and what the book says of it stands beside it.

type Common = { path: string; label: string; hint?: string | undefined; class?: string }

// idOf is the id of the field of a path.
export const idOf = (path: string): string => `field-${path.replace(/[^A-Za-z0-9_-]/g, (c) => `_${c.charCodeAt(0)}`)}`

const savedAt = (path: string): Json => at(doc.value?.plan, path) ?? null

export function putAt(path: string, value: Json): void {
  if (doc.value) put(doc.value, path, savedAt(path), value)
}

// setNow types a value and saves it at once: for what is chosen, not typed.
export function setNow(path: string, value: Json): void {
  if (!doc.value) return
  putAt(path, value)
  void save(doc.value.id)
}

// problemsAt are what is wrong at a path, or below it.
export const problemsAt = perPath(wrongAt)

function wrongAt(path: string): Problem[] {
  const below = (p: Problem) => p.path === path || p.path.startsWith(`${path}.`) || p.path.startsWith(`${path}[`)
  const refused = edit.value?.problems ?? []
  return [...refused, ...(numbers.value?.problems ?? doc.value?.problems ?? [])].filter(below).filter(firstOfItsWords)
}

const firstOfItsWords = (p: Problem, i: number, all: Problem[]): boolean => all.findIndex((q) => q.says === p.says && q.path === p.path) === i

type FieldProps = Common & { number?: boolean; placeholder?: string | undefined; wide?: boolean; suggest?: readonly string[] }

// Field is a text or a whole number. An empty field takes away what stood there.
export function Field({ path, label, hint, number, placeholder, suggest, ...more }: FieldProps) {
  const value = valueAt(path)
  if (isTable(value)) return <Fields path={path} label={label} table={value} />
  const id = idOf(path)
  const wrong = problemsAt(path)
  return (
    <div class={`field ${more.class ?? ''} ${more.wide ? 'wide' : ''}`}>
      <Label of={id} term={termAt(path)}>
        {label}
      </Label>
      <input
        id={id}
        name={path}
        type="text"
        inputMode={number ? 'numeric' : 'text'}
        autocomplete="off"
        spellcheck={false}
        placeholder={placeholder}
        list={suggest ? `${id}-list` : undefined}
        value={textOf(value)}
        aria-invalid={wrong.some((p) => p.severity === 'error')}
        aria-describedby={hint || wrong.length > 0 ? `${id}-about` : undefined}
        onInput={(event) => putAt(path, read(event.currentTarget.value, number))}
        onChange={() => doc.value && void save(doc.value.id)}
      />
      {suggest && (
        <datalist id={`${id}-list`}>
          {suggest.map((one) => (
            <option key={one} value={one} />
          ))}
        </datalist>
      )}
      <About id={`${id}-about`} hint={hint} wrong={wrong} />
    </div>
  )
}

// About is what stands under a field.
export function About({ id, hint, wrong }: { id: string; hint: string | undefined; wrong: Problem[] }) {
  if (!hint && wrong.length === 0) return null
  return (
    <div id={id} class="about">
      {hint && <p class="soft">{hint}</p>}
      <Problems of={wrong} />
    </div>
  )
}

// read is what was typed as the document has it: a whole number bare, no text as nothing.
export function read(text: string, number: boolean | undefined): Json {
  if (text.trim() === '') return null
  return number && /^\s*\d{1,9}\s*$/.test(text) ? Number(text) : text
}

// Fields is a field whose value is a table: one field for each of its keys.
function Fields({ path, label, table }: { path: string; label: string; table: { [key: string]: Json } }) {
  return (
    <fieldset class="field table">
      <legend>{label}</legend>
      {Object.entries(table).map(([key, value]) =>
        typeof value === 'boolean' ? (
          <Tick key={key} path={`${path}.${key}`} label={words.keys[key] ?? key} />
        ) : (
          <Field key={key} path={`${path}.${key}`} label={words.keys[key] ?? key} number={typeof value === 'number'} />
        ),
      )}
    </fieldset>
  )
}

// Tick is a yes or no; no is left out.
export function Tick({ path, label, hint }: Common) {
  const id = idOf(path)
  return (
    <div class="field tick">
      <input id={id} name={path} type="checkbox" checked={valueAt(path) === true} onChange={(event) => setNow(path, event.currentTarget.checked ? true : null)} />
      <label for={id}>{label}</label>
      <About id={`${id}-about`} hint={hint} wrong={problemsAt(path)} />
    </div>
  )
}

type ChoiceProps = Common & { choices: readonly (readonly [string, string])[]; none?: string | undefined }

// Choice is one of several; none leaves it out.
export function Choice({ path, label, hint, choices, none, ...more }: ChoiceProps) {
  const id = idOf(path)
  const value = textOf(valueAt(path))
  const known = value === '' || choices.some(([key]) => key === value)
  return (
    <div class={`field ${more.class ?? ''}`}>
      <Label of={id} term={termAt(path)}>
        {label}
      </Label>
      <select id={id} name={path} value={value} onChange={(event) => setNow(path, event.currentTarget.value || null)}>
        {none !== undefined && <option value="">{none}</option>}
        {known || <option value={value}>{value}</option>}
        {choices.map(([key, says]) => (
          <option key={key} value={key}>
            {says}
          </option>
        ))}
      </select>
      <About id={`${id}-about`} hint={hint} wrong={problemsAt(path)} />
    </div>
  )
}

// Group is a stretch of fields under a heading.
export function Group({ title, says, term, children }: { title: string; says?: string; term?: TermName; children: ComponentChildren }) {
  return (
    <section class="group">
      <h2>{term ? <Term of={term}>{title}</Term> : title}</h2>
      {says && <p class="soft">{says}</p>}
      {children}
    </section>
  )
}
