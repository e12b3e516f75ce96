import { computed, signal } from '@preact/signals'
import { type Edit, unchanged } from './edit'
import { keep, kept } from './keep'
import type { Book, Fault, Trouble } from './kinds'
import { type Past, noPast } from './past'

// What every page knows. Signals are read by the parts, written by the deeds.

export const book = signal<Book | null>(null)

// line is how we stand with the server.
export const line = signal<'up' | 'gone' | 'refused'>('up')

// said is read aloud and shown for a moment; mishap stays until it is put away.
export const said = signal('')
export const mishap = signal<{ fault: Fault } | { trouble: Trouble } | null>(null)

// Edits by document, kept through a reload: nothing typed is lost. What was on its way
// then may or may not have come in, so it is sent again.
export const edits = signal<Record<number, Edit>>(kept('edits-2', {}))
for (const edit of Object.values(edits.value)) {
  if (edit.state === 'saving') edit.state = 'waiting'
}
export const past = signal<Past>(kept('past', noPast))
export const stepping = signal(false) // an undo or redo is on its way
export const strokes = signal(0) // on a draft's table, not answered yet

edits.subscribe((value) => keep('edits-2', value))
past.subscribe((value) => keep('past', value))

export function setEdit(id: number, edit: Edit | null): void {
  const { [id]: _, ...others } = edits.value
  edits.value = edit ? { ...others, [id]: edit } : others
}

export type Standing = 'saved' | 'saving' | 'unsaved' | 'away' | 'closed'

// standing is one word for how safe the weaver's work is.
export const standing = computed<Standing>(() => {
  if (line.value !== 'up') return line.value === 'gone' ? 'away' : 'closed'
  const open = Object.values(edits.value)
  if (stepping.value || strokes.value > 0 || open.some((e) => e.state === 'saving')) return 'saving'
  return open.some((e) => e.state === 'waiting' || !unchanged(e)) ? 'unsaved' : 'saved'
})
