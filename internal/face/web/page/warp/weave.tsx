import { useSignal } from '@preact/signals'
import { ask } from '../ask'
import { doc, numbers } from '../doc'
import { Group } from '../field'
import { heard } from '../heard'
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
        <div class="field">
          <label for="woven">{w.woven}</label>
          <input id="woven" type="text" inputMode="numeric" value={typed.value} onInput={(event) => (typed.value = event.currentTarget.value)} />
        </div>
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
        <div class="field">
          <label for="what">{w.happened}</label>
          <select id="what" value={what.value} onChange={(event) => (what.value = event.currentTarget.value)}>
            {kinds.map(([key, says]) => (
              <option key={key} value={key}>
                {w[says]}
              </option>
            ))}
          </select>
        </div>
        {what.value === 'sitting' && (
          <div class="field">
            <label for="minutes">{w.sitting}</label>
            <input id="minutes" type="text" inputMode="numeric" value={minutes.value} onInput={(event) => (minutes.value = event.currentTarget.value)} />
          </div>
        )}
        <div class="field wide">
          <label for="note">{w.note}</label>
          <input id="note" type="text" value={note.value} onInput={(event) => (note.value = event.currentTarget.value)} />
        </div>
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
          {words.undo}
        </button>
      )}
    </li>
  )
}
