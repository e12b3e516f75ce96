import type { Answer, Difference, Fault, Problem, Saved, Setting, Trouble } from './kinds'

// Edit is a name being changed, from the first key to the book's answer. It is plain
// data, so that it can be kept through a reload and tested without a page.
export type Edit = {
  id: number
  base: number // the version it was typed upon
  was: string // the name in that version
  value: string
  state: 'typing' | 'saving' | 'waiting' | 'conflict'
  head: number // in a conflict: the version now in the book
  differences: Difference[]
  problems: Problem[]
  trouble: Trouble | null
  fault: Fault | null
}

export function begin(id: number, base: number, name: string): Edit {
  const nothing = { differences: [], problems: [], trouble: null, fault: null }
  return { id, base, was: name, value: name, state: 'typing', head: base, ...nothing }
}

// typed keeps what the book said last: it stands beside the field until the next try.
export const typed = (edit: Edit, value: string): Edit => ({ ...edit, value, state: 'typing' })

export const sending = (edit: Edit): Edit => ({ ...edit, state: 'saving' })

export const unchanged = (edit: Edit): boolean => edit.value === edit.was && edit.differences.length === 0

// settings is what to ask the book for. After a conflict that is every value of ours
// that differed, since the choice was made for all of them.
export function settings(edit: Edit): Setting[] {
  const others = edit.differences.filter((d) => d.path !== 'name').map((d) => ({ path: d.path, value: d.yours }))
  const named = edit.value !== edit.was || others.length === 0
  return named ? [{ path: 'name', value: edit.value }, ...others] : others
}

// answered is the edit after the book's answer, or null once it is saved. Whatever
// went wrong, the typed value stays.
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

// arrived is answered where the weaver may have typed on, or dropped the name, since
// it was sent: what she typed since stays.
export function arrived(sent: Edit, now: Edit | undefined, answer: Answer<Saved>): Edit | null {
  if (!now) return null
  if (now.value === sent.value) return answered(sent, answer)
  const after = answered({ ...sent, value: now.value }, answer)
  if (after) return after
  const version = answer.is === 'done' ? answer.value.version : answer.is === 'conflict' ? answer.conflict.head : sent.base
  return { ...begin(sent.id, version, sent.value), value: now.value }
}

// mine takes the weaver's value, knowing of theirs: it is typed anew upon the head.
export function mine(edit: Edit): Edit {
  const named = edit.differences.find((d) => d.path === 'name')
  return { ...edit, base: edit.head, was: named ? named.theirs : edit.was, state: 'typing' }
}

// clash is the edit for a step back or forward that met a change by others.
export function clash(id: number, name: string, base: number, head: number, differences: Difference[]): Edit {
  const named = differences.find((d) => d.path === 'name')
  const value = named ? named.yours : name
  return { ...begin(id, base, name), value, state: 'conflict', head, differences }
}
