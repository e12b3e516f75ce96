import { type Signal, signal } from '@preact/signals'
import { askLot, type Query } from './ask'
import { heard } from './heard'
import { joined } from './joined'
import type { Lot } from './kinds'

type Row = { id: number }

// Lots is a list of the book: as much of it as is shown, and what it was asked for.
export type Lots<T> = {
  items: Signal<T[] | null> // null until the first lot has come
  total: Signal<number>
  next: Signal<string>
  query: Signal<Query>
  read: () => Promise<boolean>
  more: () => Promise<boolean>
  find: (query: Query) => void
}

// lotsOf makes a list of what the server gives at /api/NAME. always is asked for each
// time, beside what is sought.
export function lotsOf<T extends Row>(name: string, always: Query = {}): Lots<T> {
  const items = signal<T[] | null>(null)
  const total = signal(0)
  const next = signal('')
  const query = signal<Query>({})

  // round tells answers to the present question from those that come late, and latest is
  // the present question.
  let round = 0
  let latest: Promise<boolean> = Promise.resolve(false)

  // wanted is how many rows are to be shown at the least. It stays through all readings,
  // so that none of them takes away what another was asked for.
  let wanted = 0

  const show = (all: T[], lot: Lot<T>): void => {
    wanted = all.length
    items.value = all
    total.value = lot.total
    next.value = lot.next
  }

  // readRound reads all rows anew, so that what is shown is one state of the book. It ends
  // when the latest reading does, and says whether that came about.
  const readRound = async (mine: number): Promise<boolean> => {
    let all: T[] = []
    for (let after = ''; ; ) {
      const lot = await askLot<T>(name, { ...always, ...query.value, after })
      if (mine !== round) return latest
      if (!heard(lot)) return false
      all = joined(all, lot.value.items)
      after = lot.value.next
      if (after === '' || all.length >= wanted) {
        show(all, lot.value)
        return true
      }
    }
  }

  const read = (): Promise<boolean> => {
    latest = readRound(++round)
    return latest
  }

  return {
    items,
    total,
    next,
    query,
    read,
    more: () => {
      wanted = (items.value?.length ?? 0) + 1
      return read()
    },
    // find asks for others; the list starts again at its first lot.
    find: (to) => {
      if (JSON.stringify(to) === JSON.stringify(query.value)) return
      query.value = to
      wanted = 0
      void read()
    },
  }
}
