import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { words } from '../words'
import { Came } from './came'
import { type Into, take, taking } from './take'

// Drop takes in files that are dropped anywhere on the page, and says what came of them.
export function Drop({ into }: { into: Into }) {
  const over = useSignal(false)
  useEffect(() => listen((is) => (over.value = is), into), [into])
  return (
    <div role="status">
      {over.value && <p class="drop">{words.taking.drop}</p>}
      {taking.value && <p class="soft">{words.taking.reading}</p>}
      <Came />
    </div>
  )
}

const hasFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false

function listen(say: (over: boolean) => void, into: Into): () => void {
  const onOver = (event: DragEvent) => {
    if (!hasFiles(event)) return
    event.preventDefault()
    say(true)
  }
  const onLeave = (event: DragEvent) => event.relatedTarget === null && say(false)
  const onDrop = (event: DragEvent) => {
    if (!hasFiles(event)) return
    event.preventDefault()
    say(false)
    void take(event.dataTransfer?.files ?? [], into)
  }
  document.addEventListener('dragover', onOver)
  document.addEventListener('dragleave', onLeave)
  document.addEventListener('drop', onDrop)
  return () => {
    document.removeEventListener('dragover', onOver)
    document.removeEventListener('dragleave', onLeave)
    document.removeEventListener('drop', onDrop)
  }
}
