// Past is which documents this window changed, in order, and which version of each
// came of it: undo and redo belong to the window, and the book knows what each step
// was. Building on the version of ours, a change by others since is met as a conflict.
export type Past = { done: number[]; undone: number[]; at: Record<number, number> }

export const noPast: Past = { done: [], undone: [], at: {} }

// remembered is how many steps a window goes back.
const remembered = 10_000

// changed: a new change ends what could be redone.
export const changed = (past: Past, id: number, version: number): Past => ({
  done: [...past.done, id].slice(-remembered),
  undone: [],
  at: { ...past.at, [id]: version },
})

export const lastDone = (past: Past): number | undefined => past.done.at(-1)
export const lastUndone = (past: Past): number | undefined => past.undone.at(-1)

export function undone(past: Past, version: number): Past {
  const id = lastDone(past)
  if (id === undefined) return past
  return { done: past.done.slice(0, -1), undone: [...past.undone, id], at: { ...past.at, [id]: version } }
}

export function redone(past: Past, version: number): Past {
  const id = lastUndone(past)
  if (id === undefined) return past
  return { done: [...past.done, id], undone: past.undone.slice(0, -1), at: { ...past.at, [id]: version } }
}

// without forgets a document that is gone: no step can reach it any more.
export function without(past: Past, id: number): Past {
  const { [id]: _, ...at } = past.at
  return { done: past.done.filter((d) => d !== id), undone: past.undone.filter((d) => d !== id), at }
}
