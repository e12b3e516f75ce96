import { askBook, askWarps } from './ask'
import { joined } from './joined'
import type { Answer, Lot, Warp } from './kinds'
import { book, line, mishap, next, search, total, warps } from './state'

// round tells answers to the present question from those that come late, and latest is
// the present question.
let round = 0
let latest: Promise<boolean> = Promise.resolve(false)

// wanted is how many warps are to be shown at the least. It stays through all readings,
// so that none of them takes away what another was asked for.
let wanted = 0

// read reads the book and as many warps as are wanted, whole lots of them. It reads
// them all anew, so that what is shown is always one state of the book. It ends when
// the latest reading does, and says whether that came about.
export function read(): Promise<boolean> {
  latest = readRound(++round)
  return latest
}

async function readRound(mine: number): Promise<boolean> {
  const about = await askBook()
  if (mine !== round) return latest
  if (!heard(about)) return false
  book.value = about.value
  let items: Warp[] = []
  for (let after = ''; ; ) {
    const lot = await askWarps(search.value, after)
    if (mine !== round) return latest
    if (!heard(lot)) return false
    items = joined(items, lot.value.items)
    after = lot.value.next
    if (after === '' || items.length >= wanted) {
      show(items, lot.value)
      return true
    }
  }
}

// more shows one lot more.
export function more(): Promise<boolean> {
  wanted = (warps.value?.length ?? 0) + 1
  return read()
}

function show(items: Warp[], lot: Lot): void {
  wanted = items.length
  warps.value = items
  total.value = lot.total
  next.value = lot.next
}

// stand notes how we stand with the server.
export function stand(answer: Answer<unknown>): void {
  line.value = answer.is === 'gone' ? 'gone' : answer.is === 'refused' ? 'refused' : 'up'
}

// heard says whether the server gave what was asked; what went wrong instead is shown
// at the top of the page.
export function heard<T>(answer: Answer<T>): answer is { is: 'done'; value: T } {
  stand(answer)
  if (answer.is === 'fault') mishap.value = { fault: answer.fault }
  if (answer.is === 'trouble') mishap.value = { trouble: answer.trouble }
  if (answer.is === 'problems' && answer.problems[0]) mishap.value = { trouble: answer.problems[0] }
  return answer.is === 'done'
}

// Many changes at once are one reading. It waits for one that is under way, so that a
// book which is changed all the time is still shown.
const gather = 100 // milliseconds
let soon = false

export function readSoon(): void {
  if (soon) return
  soon = true
  window.setTimeout(async () => {
    await latest
    soon = false
    void read()
  }, gather)
}

// find asks for other words; the list starts again at its first lot.
export function find(words: string): void {
  if (words === search.value) return
  search.value = words
  wanted = 0
  void read()
}
