import { useSignal } from '@preact/signals'
import { ask } from '../ask'
import { doc, numbers } from '../doc'
import { Group } from '../field'
import { heard } from '../heard'
import { Select, Text } from '../inputs'
import { Link } from '../link'
import { refresh } from '../refresh'
import { windowId } from '../window'
import { words } from '../words'
import { tell } from './ask'
import { type Entry, record } from './record'

const w = words.warp

// Weave keeps the place and the log of a warp on the loom.
export function Weave() {
  const now = doc.value
  if (!now) return null
  if (!now.started) {
    return (
      <Group title={w.weaveTitle}>
        <p>
          {w.notBegun} <Link to={{ page: 'warp', id: now.id, stage: 'dress' }}>{w.stages.dress}</Link>
        </p>
      </Group>
    )
  }
  return (
    <div class="columns">
      <div>
        <Woven id={now.id} />
        <Happened id={now.id} />
      </div>
      <div class="answers">
        <Log />
      </div>
    </div>
  )
}

const picksPlanned = (): string =>
  numbers.value?.sections.flatMap((s) => s.lines).find((line) => line.id === 'weft.picks')?.value ?? ''

function Woven({ id }: { id: number }) {
  const typed = useSignal('')
  const woven = record.value?.woven ?? 0
  const send = async () => {
    if (await tell(id, 'woven', { pick: Number(typed.value) })) typed.value = ''
    await refresh()
  }
  return (
    <Group title={w.weaveTitle} says={w.weaveSays}>
      <p class="total">{w.wovenOf(woven, picksPlanned())}</p>
      <form
        class="fields"
        onSubmit={(event) => {
          event.preventDefault()
          void send()
        }}
      >
        <Text id="woven" label={w.woven} number value={typed.value} set={(to) => (typed.value = to)} />
        <p class="field act">
          <button type="submit" class="strong">
            {w.sayWoven}
          </button>
        </p>
      </form>
    </Group>
  )
}

const kinds = [
  ['note', 'noted'],
  ['sitting', 'sitting'],
  ['broken', 'broken'],
] as const

function Happened({ id }: { id: number }) {
  const what = useSignal('note')
  const note = useSignal('')
  const minutes = useSignal('')
  const send = async () => {
    const said = { what: what.value, note: note.value, minutes: Number(minutes.value) || 0 }
    if (await tell(id, 'log', said)) note.value = minutes.value = ''
    await refresh()
  }
  return (
    <Group title={w.happened}>
      <form
        class="fields"
        onSubmit={(event) => {
          event.preventDefault()
          void send()
        }}
      >
        <Select id="what" label={w.happened} value={what.value} choices={kinds.map(([key, says]) => [key, w[says]])} set={(to) => (what.value = to)} />
        {what.value === 'sitting' && <Text id="minutes" label={w.sitting} number value={minutes.value} set={(to) => (minutes.value = to)} />}
        <Text id="note" class="wide" label={w.note} value={note.value} set={(to) => (note.value = to)} />
        <p class="field act">
          <button type="submit" class="plain">
            {w.write}
          </button>
        </p>
      </form>
    </Group>
  )
}

// Log is what was written down, the newest first.
export function Log() {
  const all = [...(record.value?.log ?? [])].reverse()
  return (
    <section>
      <h2>{w.log}</h2>
      {all.length === 0 ? (
        <p class="soft">{w.logNone}</p>
      ) : (
        <ol class="log" role="list">
          {all.map((entry) => (
            <LogEntry key={entry.id} entry={entry} />
          ))}
        </ol>
      )}
    </section>
  )
}

function LogEntry({ entry }: { entry: Entry }) {
  const cancel = async () => {
    heard(await ask(`/api/events/${entry.id}/cancel`, { window: await windowId, note: '' }))
    await refresh()
  }
  return (
    <li class={entry.cancelled ? 'cancelled' : ''}>
      <time class="soft" dateTime={entry.at}>
        {words.day(entry.at)}
      </time>
      <span>
        {entry.says}
        {entry.minutes ? ` (${entry.minutes} min)` : ''}
        {entry.note ? `: ${entry.note}` : ''}
        {entry.cancelled ? `, ${w.cancelled}` : ''}
      </span>
      {!entry.cancelled && (
        <button type="button" class="link" aria-label={w.cancel(entry.note || entry.says)} onClick={() => void cancel()}>
          {words.shelf.takeBack}
        </button>
      )}
    </li>
  )
}
