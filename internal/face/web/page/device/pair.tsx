import { useSignal } from '@preact/signals'
import { Text } from '../inputs'
import { MishapNotice } from '../notices'
import { Sentence } from '../problems'
import { line } from '../state'
import { words } from '../words'
import { at, goTo } from './at'
import { pair } from './hand'

const w = words.beside

const remembered = 'sley-device'

function named(): string {
  try {
    return localStorage.getItem(remembered) ?? guessed()
  } catch {
    return guessed()
  }
}

// guessed is a first name for this device; the weaver says a better one.
const guessed = (): string => (Math.min(screen.width, screen.height) >= 600 ? w.tablet : w.phone)

// PairPage lets this device in by the code that the computer shows.
export function PairPage({ code, wasIn }: { code: string; wasIn: boolean }) {
  const digits = useSignal(code)
  const name = useSignal(named())
  const wrong = useSignal('')
  const send = async () => {
    wrong.value = ''
    const says = await pair(digits.value, name.value)
    if (says) {
      wrong.value = says
      return
    }
    if (line.value === 'gone') return
    remember(name.value)
    line.value = 'up'
    goTo(at.value.page === 'pair' ? { page: 'hand' } : at.value, true)
  }
  return (
    <>
      <h1>{wasIn ? w.outHead : w.pairing}</h1>
      <p>{wasIn ? w.outSays : code ? w.codeCame : w.pairingSays}</p>
      <div role="status">{line.value === 'gone' && <p class="care">{w.goneHead}</p>}</div>
      <div role="alert">{wrong.value && <Sentence class="care" says={wrong.value} />}</div>
      <MishapNotice />
      <form
        class="pairing"
        onSubmit={(event) => {
          event.preventDefault()
          void send()
        }}
      >
        <Text id="code" class="digits" label={w.code} number value={digits.value} set={(to) => (digits.value = to)} />
        <Text id="device-name" label={w.deviceName} value={name.value} set={(to) => (name.value = to)} />
        <button type="submit" class="strong">
          {w.pairNow}
        </button>
      </form>
    </>
  )
}

function remember(name: string): void {
  try {
    localStorage.setItem(remembered, name)
  } catch {
    // asked for again next time
  }
}
