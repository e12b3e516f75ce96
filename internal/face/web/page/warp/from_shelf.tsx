import { useSignal } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import { act } from '../deeds'
import { doc } from '../doc'
import { Select } from '../inputs'
import type { Card } from '../kinds'
import type { Origin } from '../kinds_doc'
import { Link } from '../link'
import { words } from '../words'
import { origins } from './shelf'

const w = words.warp

type ChoiceProps = {
  id: string
  label: string
  none: string
  shelf: readonly Card[]
  partOf: () => string // where in the warp it goes
  onChoose?: (card: Card | undefined) => void
  children?: ComponentChildren // asked once something is chosen
  other?: ComponentChildren // what may be done instead
}

// FromShelfChoice takes a copy of something that stands on a shelf into the open warp.
export function FromShelfChoice({ id, label, none, shelf, partOf, onChoose, children, other }: ChoiceProps) {
  const chosen = useSignal('')
  const choose = (to: string) => {
    chosen.value = to
    onChoose?.(shelf.find((one) => String(one.id) === to))
  }
  const take = async () => {
    if (doc.value && (await act(doc.value, 'use', { part: partOf(), shelf: Number(chosen.value) }))) chosen.value = ''
  }
  const isChosen = chosen.value !== ''
  return (
    <div class="fields add">
      <Select id={id} label={label} none={none} value={chosen.value} choices={shelf.map((one) => [String(one.id), one.name])} set={choose} />
      {isChosen && children}
      {(isChosen || other) && (
        <p class="field act buttons">
          {isChosen && (
            <button type="button" class="plain" onClick={() => void take()}>
              {w.takeYarn}
            </button>
          )}
          {other}
        </p>
      )}
    </div>
  )
}

// FromShelf says where a part came from, and takes the newer or puts it on the shelf.
export function FromShelf({ part, name }: { part: string; name: string }) {
  const now = doc.value
  const from = origins.value.find((o) => o.part === part)
  if (!now) return null
  return (
    <p class="soft origin">
      {from?.id ? <Whence from={from} /> : null}
      {from?.newer && (
        <>
          {' '}
          {w.newerOnShelf(from.name ?? name)}{' '}
          <button type="button" class="link" onClick={() => void act(now, 'take-newer', { part })}>
            {w.takeNewer}
          </button>
        </>
      )}{' '}
      <button type="button" class="link" aria-label={`${w.putOnShelf}: ${name}`} onClick={() => void act(now, 'put-on-shelf', { part, ...(from?.id ? {} : { name: `${name}, ${now.name}` }) })}>
        {w.putOnShelf}
      </button>
    </p>
  )
}

const pages = { yarn: 'yarn', loom: 'loom', draft: 'draft' } as const

function Whence({ from }: { from: Origin }) {
  const page = pages[from.kind as keyof typeof pages]
  const says = w.cameFrom(from.name ?? '')
  return page && from.id && !from.removed ? <Link to={{ page, id: from.id }}>{says}</Link> : <span>{says}</span>
}
