// A browser opens six connections to one host, so ten windows cannot each keep a
// stream open. One window, which holds a lock, listens for all and passes on what it
// hears; when it closes or is hidden the next one takes over.

export type Ears = {
  changed: () => void // something in the book changed
  line: (up: boolean) => void // the stream was opened, or lost
}

// Word is what windows tell each other. What changed is not passed on: a window reads
// its list anew, and so cannot put parts of two states of the book together.
type Word = 'changed' | 'up' | 'lost'

const name = 'sley-live'

// letGoAfter is how long a hidden window keeps the stream, in milliseconds: turning to
// another window and back should not open it anew.
const letGoAfter = 10_000

// Pauses between tries to open a lost stream, in milliseconds.
const shortest = 500
const longest = 8_000

export function listen(ears: Ears): void {
  const shared = 'locks' in navigator && 'BroadcastChannel' in window
  const channel = shared ? new BroadcastChannel(name) : undefined
  const hear = (word: Word) => (word === 'changed' ? ears.changed() : ears.line(word === 'up'))
  const tell = (word: Word) => {
    channel?.postMessage(word)
    hear(word)
  }
  channel?.addEventListener('message', (event) => hear(event.data as Word))
  whileSeen(() => (shared ? lead(tell) : stream(tell)), () => ears.line(true))
}

// whileSeen runs start while the window is seen, and what start returned once it has
// been hidden for a while. back is called when the window is seen again: it may have
// missed something.
function whileSeen(start: () => () => void, back: () => void): void {
  let stop: (() => void) | undefined
  let timer = 0
  const look = () => {
    clearTimeout(timer)
    if (!document.hidden) {
      stop ??= start()
      return
    }
    timer = window.setTimeout(() => {
      stop?.()
      stop = undefined
    }, letGoAfter)
  }
  document.addEventListener('visibilitychange', () => {
    look()
    if (!document.hidden) back()
  })
  look()
}

// lead waits for its turn to listen for all. What it returns steps down, or out of the
// queue.
function lead(tell: (word: Word) => void): () => void {
  const leaving = new AbortController()
  const turn = () => {
    const close = stream(tell)
    return new Promise<void>((resolve) => {
      leaving.signal.addEventListener('abort', () => {
        close()
        resolve()
      })
    })
  }
  navigator.locks.request(name, { signal: leaving.signal }, turn).catch(() => undefined) // left the queue
  return () => leaving.abort()
}

// stream keeps a stream open, and opens it again by itself: browsers differ in when
// they would.
function stream(tell: (word: Word) => void): () => void {
  let source: EventSource
  let timer = 0
  let pause = shortest
  const open = () => {
    source = new EventSource('/api/events')
    source.addEventListener('open', () => {
      pause = shortest
      tell('up')
    })
    source.addEventListener('changed', () => tell('changed'))
    source.addEventListener('error', () => {
      source.close()
      tell('lost')
      timer = window.setTimeout(open, pause)
      pause = Math.min(pause * 2, longest)
    })
  }
  open()
  return () => {
    clearTimeout(timer)
    source.close()
  }
}
