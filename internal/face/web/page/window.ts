import { keep, kept } from './keep'

// freshId is a name for one window. randomUUID is missing on a page that came over
// plain http from another machine, getRandomValues is not.
export function freshId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12))
  return 'w-' + Array.from(bytes, (b) => b.toString(16).padStart(2, '0')).join('')
}

// handover is how long a page that is loaded anew waits for the lock of the one before,
// and between two tries, in milliseconds.
const handover = 3_000
const pause = 50

type Claim = { id: string; copied: boolean }

// claim is the name of this window, the same after a reload. A browser that duplicates
// a window copies what it kept too: a lock tells the copy from the original, and the
// copy gets a name of its own.
async function claim(): Promise<Claim> {
  const id = kept('window', '') || freshId()
  const until = Date.now() + handover
  while (navigator.locks && !(await hold(id))) {
    if (Date.now() > until) {
      const own = freshId()
      keep('window', own)
      await hold(own) // nobody else has it
      return { id: own, copied: true }
    }
    await new Promise((resolve) => setTimeout(resolve, pause))
  }
  keep('window', id)
  return { id, copied: false }
}

// hold takes the lock of a window for as long as the page lives; false when another
// page has it.
function hold(id: string): Promise<boolean> {
  return new Promise((resolve) => {
    void navigator.locks.request(`sley-${id}`, { ifAvailable: true }, (lock) => {
      resolve(lock !== null)
      return lock && new Promise<never>(() => undefined)
    })
  })
}

const claimed = claim()

export const windowId: Promise<string> = claimed.then((c) => c.id)

// windowCopied tells whether the window began as a copy of another.
export const windowCopied: Promise<boolean> = claimed.then((c) => c.copied)
