import type { Order, Run } from '../kinds_doc'

// The text of an order with one of its items changed; the rest stays as it was typed.

type Item = { yarn?: string | undefined; count: number; density?: string | undefined; beam?: number | undefined }

// runText writes one item.
export function runText(run: Item): string {
  const parts = [run.yarn ?? '', String(run.count)]
  if (run.density) parts.push(`at ${run.density}`)
  if (run.beam && run.beam > 1) parts.push(`on beam ${run.beam}`)
  return parts.filter((part) => part !== '').join(' ')
}

const between = (order: Order, from: number, to: number, text: string): string => order.typed.slice(0, from) + text + order.typed.slice(to)

// replaced puts another item in the place of one.
export function replaced(order: Order, i: number, run: Run): string {
  const old = order.runs[i]
  return old ? between(order, old.at, old.to, runText(run)) : order.typed
}

// withAfter puts an item behind one.
export function withAfter(order: Order, i: number, text: string): string {
  const old = order.runs[i]
  return old ? between(order, old.to, old.to, `, ${text}`) : order.typed
}

// moved changes an item with the one before it.
export function moved(order: Order, i: number): string {
  const [before, run] = [order.runs[i - 1], order.runs[i]]
  if (!before || !run) return order.typed
  const text = (r: Run) => order.typed.slice(r.at, r.to)
  return order.typed.slice(0, before.at) + text(run) + order.typed.slice(before.to, run.at) + text(before) + order.typed.slice(run.to)
}

// removed takes an item away, with the comma that parts it from its neighbour; a bracket
// that would be left empty goes with what it repeats.
export function removed(order: Order, i: number): string {
  const old = order.runs[i]
  if (!old) return order.typed
  let [from, to] = [old.at, old.to]
  for (;;) {
    const before = order.typed.slice(0, from).match(/\(\s*$/)
    const after = order.typed.slice(to).match(/^\s*\)(\s*(x\s*(\d+|fill)|mirrored(\s+(open|doubled))?))*/)
    if (!before || !after) break
    from -= before[0].length
    to += after[0].length
  }
  const comma = order.typed.slice(to).match(/^\s*,\s*/)
  if (comma) to += comma[0].length
  else from -= order.typed.slice(0, from).match(/\s*,\s*$/)?.[0].length ?? 0
  return between(order, from, to, '')
}
