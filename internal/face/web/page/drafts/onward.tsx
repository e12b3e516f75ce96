import { useSignal } from '@preact/signals'
import { ask } from '../ask'
import { save } from '../deeds'
import { doc } from '../doc'
import { heard } from '../heard'
import { Select, Text } from '../inputs'
import type { Problem, Saved } from '../kinds'
import { go } from '../place'
import { ProblemList } from '../problems'
import { windowId } from '../window'
import { words } from '../words'
import { judged, kinds } from './open'

const w = words.draft

// Begin begins a warp with the open draft.
export function Begin() {
  const now = doc.value
  const kind = useSignal('')
  const name = useSignal('')
  const wrong = useSignal<Problem[]>([])
  if (!now || judged.value?.figures.length === 0) return null
  const as = kind.value || (kinds.value[0]?.id ?? '')
  const begin = async () => {
    await save(now.id)
    const answer = await ask<Saved>('/api/warps/new', { window: await windowId, kind: as, name: name.value.trim(), draft: now.id })
    if (answer.is === 'problems') wrong.value = answer.problems
    else if (heard(answer)) go({ page: 'warp', id: answer.value.id, stage: 'piece' })
  }
  return (
    <form
      class="group begin"
      onSubmit={(event) => {
        event.preventDefault()
        void begin()
      }}
    >
      <h2>{w.weaveIt}</h2>
      <p class="soft">{w.weaveSays}</p>
      <div class="fields">
        <Select id="begin-kind" label={w.kind} value={as} choices={kinds.value.map((one) => [one.id, one.name])} set={(to) => (kind.value = to)} />
        <Text id="begin-name" label={w.called} placeholder={kinds.value.find((one) => one.id === as)?.name} value={name.value} set={(to) => (name.value = to)} />
      </div>
      <ProblemList of={wrong.value} />
      <button type="submit" class="strong">
        {w.begin}
      </button>
    </form>
  )
}

// TakeAlong gives the draft as files.
export function TakeAlong() {
  const now = doc.value
  if (!now || judged.value?.figures.length === 0) return null
  return (
    <section class="group">
      <h2>{w.export}</h2>
      <p class="soft">{w.exportSays}</p>
      <ul class="files" role="list">
        {w.files.map(([file, says]) => (
          <li key={file}>
            <a href={`/api/documents/${now.id}/${file}`} download>
              {says}
            </a>
          </li>
        ))}
      </ul>
    </section>
  )
}
