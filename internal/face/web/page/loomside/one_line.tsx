import { useSignal } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import { Text } from '../inputs'

type Props = {
  id: string
  label: string
  button: string
  send: (typed: string) => void
  placeholder?: string
  number?: boolean
  children?: ComponentChildren // what stands before the line
}

// OneLine is a line that is sent by its button or by Enter. An empty one is not sent; of a
// number nothing is but a whole one.
export function OneLine({ id, label, button, send, placeholder, number, children }: Props) {
  const typed = useSignal('')
  const sendIt = (event: Event) => {
    event.preventDefault()
    if (!typed.value || (number && !Number.isInteger(Number(typed.value)))) return
    send(typed.value)
    typed.value = ''
  }
  return (
    <form class="fields" onSubmit={sendIt}>
      {children}
      <Text id={id} label={label} placeholder={placeholder} number={number ?? false} value={typed.value} set={(to) => (typed.value = to)} />
      <p class="field act">
        <button type="submit" class="plain">
          {button}
        </button>
      </p>
    </form>
  )
}
