import { useSignal } from '@preact/signals'
import { ask } from '../ask'
import { save } from '../deeds'
import { doc } from '../doc'
import { heard } from '../heard'
import type { Problem, Saved } from '../kinds'
import { go } from '../place'
import { windowId } from '../window'
import { ProblemList } from '../problems'
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
        <div class="field">
          <label for="begin-kind">{w.kind}</label>
          <select id="begin-kind" value={as} onChange={(event) => (kind.value = event.currentTarget.value)}>
            {kinds.value.map((one) => (
              <option key={one.id} value={one.id}>
                {one.name}
              </option>
            ))}
          </select>
        </div>
        <div class="field">
          <label for="begin-name">{w.called}</label>
          <input id="begin-name" type="text" autocomplete="off" placeholder={kinds.value.find((one) => one.id === as)?.name} value={name.value} onInput={(event) => (name.value = event.currentTarget.value)} />
        </div>
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
