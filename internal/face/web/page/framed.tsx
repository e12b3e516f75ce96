import type { ComponentChildren } from 'preact'
import { rename } from './deeds'
import { doc, edit, lost } from './doc'
import { copy, type Kind, listOf, remove } from './document'
import { Link } from './link'
import { Clash, NameField, naming, Said } from './name'
import { FaultText } from './notices'
import { words } from './words'

const d = words.document_

type Props = { kind: Kind; under?: ComponentChildren; onward?: ComponentChildren; children: ComponentChildren }

// Framed is the page of a document: its name, how its changes stand, and the ways out of
// it. under stands under the name, onward before the ways out.
export function Framed({ kind, under, onward, children }: Props) {
  const now = doc.value
  if (lost.value || (now && (now.kind !== kind || now.removed))) return <Lost kind={kind} />
  if (!now) return <p class="soft">{words.reading}</p>
  return (
    <>
      {kind !== 'warp' && (
        <p class="back">
          <Link to={listOf(kind)}>{d.back[kind]}</Link>
        </p>
      )}
      <Title />
      {under}
      <Standing />
      {children}
      <div class="ways">
        {onward}
        <button type="button" class="link" onClick={() => void copy(kind, now.id)}>
          {d.copy[kind]}
        </button>
        <button type="button" class="link" onClick={() => void remove()}>
          {d.remove[kind]}
        </button>
      </div>
    </>
  )
}

function Lost({ kind }: { kind: Kind }) {
  return (
    <>
      <h1>{d.lost[kind]}</h1>
      <p>
        {d.lostSays} <Link to={listOf(kind)}>{d.back[kind]}</Link>
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
