import { effect } from '@preact/signals'
import { sendWaiting } from './deeds'
import { read, readSoon } from './list'
import { listen } from './live'
import { noPast } from './past'
import { line, past } from './state'
import { windowCopied } from './window'

// Pauses between tries to reach a server that is gone, in milliseconds.
const shortest = 1_000
const longest = 8_000

// watch reads the book, listens for changes of it, and looks for the server when it is
// gone.
export function watch(): void {
  // What the original did is not the copy's to undo.
  void windowCopied.then((copied) => copied && (past.value = noPast))
  listen({ changed: readSoon, line: (up) => (up ? readSoon() : void read()) })
  void read().then(sendWaiting)
  lookWhileGone()
}

function lookWhileGone(): void {
  let pause = shortest
  let timer = 0
  const look = async () => {
    await read()
    pause = Math.min(pause * 2, longest)
    if (line.value === 'gone') timer = window.setTimeout(look, pause)
  }
  let before = line.peek()
  effect(() => {
    const now = line.value
    clearTimeout(timer)
    if (now === 'gone') timer = window.setTimeout(look, pause)
    if (now === 'up' && before !== 'up') {
      pause = shortest
      sendWaiting()
    }
    before = now
  })
}
