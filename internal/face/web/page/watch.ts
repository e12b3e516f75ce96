import { effect } from '@preact/signals'
import { sendKept } from './deeds'
import { listen } from './live'
import { noPast } from './past'
import { refresh, refreshSoon } from './refresh'
import { line, past } from './state'
import { windowCopied } from './window'

// Pauses between tries to reach a server that is gone, in milliseconds.
const shortest = 1_000
const longest = 8_000

// watch reads the page, listens for changes of the book, and looks for the server when
// it is gone.
export function watch(): void {
  // What the original did is not the copy's to undo.
  void windowCopied.then((copied) => copied && (past.value = noPast))
  listen({ changed: refreshSoon, line: (up) => (up ? refreshSoon() : void refresh()) })
  void refresh().then(sendKept)
  lookWhileGone()
}

function lookWhileGone(): void {
  let pause = shortest
  let timer = 0
  const look = async () => {
    await refresh()
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
      sendKept()
    }
    before = now
  })
}
