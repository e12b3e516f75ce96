import { useSignal } from '@preact/signals'
import { words } from '../words'
import { LoomsideLog } from './log'

// Logged is the log, read once it is opened.
export function Logged({ id, place }: { id: number; place: number }) {
  const isOpen = useSignal(false)
  return (
    <details class="loom-more" open={isOpen.value} onToggle={(event) => (isOpen.value = event.currentTarget.open)}>
      <summary>{words.loomsideLog.title}</summary>
      {isOpen.value && <LoomsideLog id={id} place={place} />}
    </details>
  )
}
