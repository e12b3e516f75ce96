import { askBook } from './ask'
import { heard } from './heard'
import { book } from './state'

// What the shown page reads of the book. Each page says what when it is shown.
let reader: () => Promise<boolean> = () => Promise.resolve(true)

export function readBy(read: () => Promise<boolean>): void {
  reader = read
}

// What every page reads beside that: the book, or what a device beside the loom may know.
let about: () => Promise<boolean> = readBook

export function aboutBy(read: () => Promise<boolean>): void {
  about = read
}

async function readBook(): Promise<boolean> {
  const answer = await askBook()
  if (!heard(answer)) return false
  book.value = answer.value
  return true
}

let latest: Promise<boolean> = Promise.resolve(false)

// readAll asks for both at once: of a large book each takes its time.
async function readAll(): Promise<boolean> {
  const read = await Promise.all([about(), reader()])
  return read.every(Boolean)
}

// refresh reads the book and what the page shows of it, all anew.
export function refresh(): Promise<boolean> {
  latest = readAll()
  return latest
}

// Many changes at once are one reading. It waits for one that is under way, so that a
// book which is changed all the time is still shown.
const gather = 100 // milliseconds
let soon = false

export function refreshSoon(): void {
  if (soon) return
  soon = true
  window.setTimeout(async () => {
    await latest
    soon = false
    void refresh()
  }, gather)
}
