import type { Answer, Difference, Fault, Json, Problem, Saved, Setting, Trouble } from './kinds'
import { isTable, stepsOf } from './tree'

// Values are what stands at paths of a document. null is nothing: what stands there is
// taken away.
export type Values = Record<string, Json>

// Edit is what is being changed of a document, from the first key to the book's answer.
// It is plain data, so that it can be kept through a reload and tested without a page.
export type Edit = {
  id: number
  name: string // what the document is called, for what is said of it
  base: number // the version it was typed upon
  was: Values // what stood in that version, of the paths that were typed at
  value: Values
  state: 'typing' | 'saving' | 'waiting' | 'conflict'
  head: number // in a conflict: the version now in the book
  differences: Difference[]
  problems: Problem[]
  trouble: Trouble | null
  fault: Fault | null
}

export function begin(id: number, base: number, name: string): Edit {
  const nothing = { was: {}, value: {}, differences: [], problems: [], trouble: null, fault: null }
  return { id, name, base, state: 'typing', head: base, ...nothing }
}

// typed keeps what the book said last: it stands beside the field until the next try.
// A value that is typed back to what it was is no change of it.
export function typed(edit: Edit, path: string, was: Json, value: Json): Edit {
  const before = path in edit.was ? edit.was : { ...edit.was, [path]: was }
  return { ...edit, was: before, value: { ...edit.value, [path]: value }, state: 'typing' }
}

export const sending = (edit: Edit): Edit => ({ ...edit, state: 'saving' })

export const same = (a: Json | undefined, b: Json | undefined): boolean => JSON.stringify(a ?? null) === JSON.stringify(b ?? null)

const changedPaths = (edit: Edit): string[] => Object.keys(edit.value).filter((path) => !same(edit.value[path], edit.was[path]))

export const unchanged = (edit: Edit): boolean => changedPaths(edit).length === 0 && edit.differences.length === 0

const setting = (path: string, value: Json | undefined): Setting => (value === null || value === undefined ? { path } : { path, value })

// settings is what to ask the book for. After a conflict that is every value of ours
// that differed, since the choice was made for all of them.
export function settings(edit: Edit): Setting[] {
  const others = edit.differences.filter((d) => !(d.path in edit.value)).map((d) => ({ path: d.path, value: d.yours }))
  const own = changedPaths(edit)
  const paths = own.length === 0 && others.length === 0 ? Object.keys(edit.value) : own
  return [...paths.map((path) => setting(path, edit.value[path])), ...others]
}

// answered is the edit after the book's answer, or null once it is saved. Whatever
// went wrong, the typed values stay.
export function answered(edit: Edit, answer: Answer<Saved>): Edit | null {
  const quiet = { ...edit, problems: [], trouble: null, fault: null }
  switch (answer.is) {
    case 'done':
      return null
    case 'conflict': {
      const { head, differences } = answer.conflict
      // A save whose answer was lost comes back as a conflict with itself.
      if (differences.length > 0 && differences.every((d) => d.theirs === d.yours)) return null
      return { ...quiet, state: 'conflict', head, differences }
    }
    case 'problems':
      return { ...quiet, state: 'typing', problems: answer.problems }
    case 'trouble':
      return { ...quiet, state: 'typing', trouble: answer.trouble }
    case 'fault':
      return { ...quiet, state: 'typing', fault: answer.fault }
    case 'refused':
    case 'gone':
      return { ...quiet, state: 'waiting' }
  }
}

// arrived is answered where the weaver may have typed on, or dropped the edit, since it
// was sent: what she typed since stays.
export function arrived(sent: Edit, now: Edit | undefined, answer: Answer<Saved>): Edit | null {
  if (!now) return null
  const since = Object.keys(now.value).filter((path) => !same(now.value[path], sent.value[path]))
  if (since.length === 0) return answered(sent, answer)
  const after = answered({ ...sent, was: { ...now.was, ...sent.was }, value: now.value }, answer)
  if (after) return after
  const version = answer.is === 'done' ? answer.value.version : answer.is === 'conflict' ? answer.conflict.head : sent.base
  return since.reduce((edit, path) => typed(edit, path, sent.value[path] ?? now.was[path] ?? null, now.value[path] ?? null), begin(sent.id, version, sent.name))
}

// mine takes the weaver's values, knowing of theirs: they are typed anew upon the head.
export function mine(edit: Edit): Edit {
  const theirs = Object.fromEntries(edit.differences.map((d) => [d.path, d.theirs]))
  return { ...edit, base: edit.head, was: { ...edit.was, ...theirs }, state: 'typing' }
}

// clash is the edit for a step back or forward that met a change by others.
export function clash(id: number, name: string, base: number, head: number, differences: Difference[]): Edit {
  return { ...begin(id, base, name), state: 'conflict', head, differences }
}

// laidOver is a document's tree with values set in it, until the book's own comes.
export function laidOver(tree: Json | undefined, values: Values): Json {
  return Object.entries(values).reduce<Json>((to, [path, value]) => put(to, stepsOf(path), value), tree ?? {})
}

function put(tree: Json | undefined, [step, ...rest]: (string | number)[], value: Json): Json {
  if (step === undefined) return value
  if (typeof step === 'number') {
    const list = Array.isArray(tree) ? [...tree] : []
    const inner = rest.length > 0 ? put(list[step], rest, value) : value
    if (inner === null) list.splice(step, 1)
    else list[step] = inner
    return list
  }
  const table = isTable(tree) ? { ...tree } : {}
  const inner = rest.length > 0 ? put(table[step], rest, value) : value
  if (inner === null) delete table[step]
  else table[step] = inner
  return table
}
