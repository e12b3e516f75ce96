import { act, rename, save } from '../deeds'
import { doc, edit, lost } from '../doc'
import { Field, Group } from '../field'
import { Link } from '../link'
import { Clash, NameField, naming, Said } from '../name'
import { FaultText } from '../notices'
import { go } from '../place'
import { said } from '../state'
import { askCopy } from '../warp/ask'
import { words } from '../words'
import { ClothOf, Drawing } from './drawing'
import { Figures, Told } from './known'
import { Make } from './make'
import { Begin, TakeAlong } from './onward'

const w = words.draft

// DraftPage is one draft of the shelf.
export function DraftPage() {
  const now = doc.value
  if (lost.value || (now && now.kind !== 'draft')) return <Lost />
  if (!now) return <p class="soft">{words.reading}</p>
  return (
    <>
      <Title />
      <Typed />
      <div class="columns wide-left">
        <div>
          <Drawing />
          <Begin />
          <Make />
          <Group title={w.note}>
            <Field path="note" label={w.noteLabel} hint={w.noteHint} wide />
          </Group>
          <TakeAlong />
        </div>
        <div>
          <ClothOf />
          <Figures />
          <Told />
        </div>
      </div>
      <Ways />
    </>
  )
}

function Lost() {
  return (
    <>
      <h1>{w.lost}</h1>
      <p>
        {w.lostSays} <Link to={{ page: 'drafts' }}>{w.toDrafts}</Link>
      </p>
    </>
  )
}

function Title() {
  const now = doc.value
  const open = edit.value
  if (!now) return null
  if (open && open.state !== 'conflict' && naming(open)) return <NameField edit={open} />
  return (
    <div class="title-row">
      <h1>{now.name}</h1>
      <button type="button" class="link" aria-label={words.renameOf(now.name)} onClick={() => rename(now)}>
        {words.rename}
      </button>
    </div>
  )
}

// Typed is what the book says of what was typed and has no field to stand beside.
function Typed() {
  const open = edit.value
  if (!open || naming(open)) return open?.state === 'conflict' ? <Clash edit={open} /> : null
  if (open.state === 'conflict') return <Clash edit={open} />
  return (
    <div role="status">
      <Said edit={open} />
      {open.fault && <FaultText fault={open.fault} id="fault-field" />}
    </div>
  )
}

function Ways() {
  const now = doc.value
  if (!now) return null
  return (
    <div class="ways">
      <button type="button" class="link" onClick={() => void copy(now.id)}>
        {w.copy}
      </button>
      <button type="button" class="link" onClick={() => void remove()}>
        {w.remove}
      </button>
    </div>
  )
}

async function copy(id: number): Promise<void> {
  await save(id)
  const made = await askCopy(id)
  if (made) go({ page: 'draft', id: made })
}

async function remove(): Promise<void> {
  const now = doc.value
  if (!now || !(await act(now, 'remove'))) return
  go({ page: 'drafts' })
  said.value = w.removed(now.name)
}
