import { askBook, askWarps } from './ask'
import { joined } from './joined'
import type { Answer, Lot, Warp } from './kinds'
import { book, line, mishap, next, search, total, warps } from './state'

// round tells answers to the present question from those that come late.
let round = 0

// wanted is how many warps were shown last, which is how many to read again.
let wanted = 0

// read reads the book and as many warps as are shown. It reads them all anew, so that
// what is shown is always one state of the book.
export async function read(): Promise<boolean> {
  const mine = ++round
  const about = await askBook()
  if (mine !== round || !heard(about)) return false
  book.value = about.value
  let items: Warp[] = []
  for (let after = ''; ; ) {
    const lot = await askWarps(search.value, after)
    if (mine !== round || !heard(lot)) return false
    items = joined(items, lot.value.items)
    after = lot.value.next
    if (after === '' || items.length >= wanted) {
      show(items, lot.value)
      return true
    }
  }
}

// more adds the next lot.
export async function more(): Promise<void> {
  const mine = ++round
  const lot = await askWarps(search.value, next.value)
  if (mine === round && heard(lot)) show(joined(warps.value ?? [], lot.value.items), lot.value)
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

// Many changes at once are one reading.
const gather = 100 // milliseconds
let timer = 0

export function readSoon(): void {
  clearTimeout(timer)
  timer = window.setTimeout(() => void read(), gather)
}

// find asks for other words; the list starts again at its first lot.
export function find(words: string): void {
  if (words === search.value) return
  search.value = words
  wanted = 0
  readSoon()
}
