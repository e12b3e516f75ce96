import { words } from '../words'
import { loom } from './state'

// LoomsidePage is one warp beside the loom.
export function LoomsidePage({ id, home }: { id: number; home?: preact.ComponentChild }) {
  const now = loom.value
  if (!now || now.id !== id) return <p class="soft">{words.reading}</p>
  return (
    <>
      <h1>{now.name}</h1>
      <p>{home}</p>
    </>
  )
}
