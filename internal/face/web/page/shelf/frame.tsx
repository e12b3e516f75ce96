import type { ComponentChildren } from 'preact'
import { act, rename, save } from '../deeds'
import { doc, edit, lost } from '../doc'
import { Link } from '../link'
import { Clash, NameField, naming, Said } from '../name'
import { FaultText } from '../notices'
import { go, type Place, type Shelf } from '../place'
import { said } from '../state'
import { askCopy } from '../warp/ask'
import { words } from '../words'

const s = words.shelf

type Props = { kind: 'yarn' | 'loom'; children: ComponentChildren }

// Framed is the page of a document of the shelf: its name, how its changes stand, and the
// ways out of it.
export function Framed({ kind, children }: Props) {
  const now = doc.value
  const shelf: Shelf = `${kind}s`
  if (lost.value || (now && (now.kind !== kind || now.removed))) return <Gone kind={kind} />
  if (!now) return <p class="soft">{words.reading}</p>
  return (
    <>
      <p class="back">
        <Link to={{ page: shelf }}>{s.back[kind]}</Link>
      </p>
      <Title />
      <Standing />
      {children}
      <div class="ways">
        <button type="button" class="link" onClick={() => void copy(now.id, kind)}>
          {s.copy[kind]}
        </button>
        <button type="button" class="link" onClick={() => void remove({ page: shelf })}>
          {s.remove[kind]}
        </button>
      </div>
    </>
  )
}

function Gone({ kind }: { kind: 'yarn' | 'loom' }) {
  return (
    <>
      <h1>{s.gone[kind]}</h1>
      <p>
        {s.goneSays} <Link to={{ page: `${kind}s` }}>{s.back[kind]}</Link>
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
      {now.demo && <span class="soft">{words.fromDemo}</span>}
    </div>
  )
}

// Standing is what the book says of what was typed last.
function Standing() {
  const open = edit.value
  if (open?.state === 'conflict') return <Clash edit={open} />
  if (!open || naming(open)) return null
  return (
    <div role="status">
      <Said edit={open} />
      {open.fault && <FaultText fault={open.fault} id="fault-field" />}
    </div>
  )
}

async function copy(id: number, kind: 'yarn' | 'loom'): Promise<void> {
  await save(id)
  const made = await askCopy(id)
  if (made) go({ page: kind, id: made })
}

async function remove(to: Place): Promise<void> {
  const now = doc.value
  if (!now || !(await act(now, 'remove'))) return
  go(to)
  said.value = words.warp.removed(now.name)
}
