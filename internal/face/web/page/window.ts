import { keep, kept } from './keep'

// freshId is a name for one window. randomUUID is missing on a page that came over
// plain http from another machine, getRandomValues is not.
export function freshId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12))
  return 'w-' + Array.from(bytes, (b) => b.toString(16).padStart(2, '0')).join('')
}

// handover is how long a reloading page may take to let its lock go, in milliseconds.
const handover = 500

type Claim = { id: string; copied: boolean }

// claim is the name of this window, the same after a reload. A browser that duplicates
// a window copies what it kept too: a lock tells the copy from the original, and the
// copy gets a name of its own.
async function claim(): Promise<Claim> {
  const id = kept('window', '') || freshId()
  if (!navigator.locks || (await hold(`sley-window-${id}`))) {
    keep('window', id)
    return { id, copied: false }
  }
  const own = freshId()
  keep('window', own)
  await hold(`sley-window-${own}`)
  return { id: own, copied: true }
}

// hold takes a lock for as long as the page lives; false when another page has it.
function hold(name: string): Promise<boolean> {
  return new Promise((resolve) => {
    navigator.locks
      .request(name, { signal: AbortSignal.timeout(handover) }, () => {
        resolve(true)
        return new Promise<never>(() => undefined)
      })
      .catch(() => resolve(false))
  })
}

const claimed = claim()

export const windowId: Promise<string> = claimed.then((c) => c.id)

// windowCopied tells whether the window began as a copy of another.
export const windowCopied: Promise<boolean> = claimed.then((c) => c.copied)
