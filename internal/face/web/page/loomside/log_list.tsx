import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { book } from '../state'
import { words } from '../words'
import { type LogEvent, logNow, readLog, takeBack } from './logged'

const w = words.loomsideLog

// shownFirst is how many entries are shown before all are asked for.
const shownFirst = 20

// LogList is what was written down of a warp, the newest first. It is read anew whenever
// the page is.
export function LogList({ id }: { id: number }) {
  useEffect(() => book.subscribe(() => void readLog(id)), [id])
  const whole = useSignal(false)
  const now = logNow.value
  if (now?.id !== id) return <p class="soft">{words.reading}</p>
  if (now.events.length === 0) return <p class="soft">{w.none}</p>
  const shown = whole.value ? now.events : now.events.slice(0, shownFirst)
  return (
    <>
      <ol class="loom-log" role="list">
        {shown.map((entry) => (
          <Entry key={entry.id} id={id} entry={entry} />
        ))}
      </ol>
      {shown.length < now.events.length && (
        <button type="button" class="plain" onClick={() => (whole.value = true)}>
          {w.all(now.events.length)}
        </button>
      )}
    </>
  )
}

// about is what there is to say of an entry besides what happened. The place of a start is
// a version, and no pick.
const about = (e: LogEvent): string =>
  [e.note ?? '', e.minutes ? w.lasted(e.minutes) : '', e.place && e.what !== 'started' ? w.pick(e.place) : ''].filter(Boolean).join(', ')

function Entry({ id, entry }: { id: number; entry: LogEvent }) {
  const says = [entry.says, about(entry)].filter(Boolean).join(': ')
  return (
    <li>
      <div>
        <time class="soft" dateTime={entry.at}>
          {w.at(entry.at)}
        </time>
        <p>{says}</p>
      </div>
      {entry.what === 'photograph' && <Thumbnail entry={entry} says={says} />}
      <button type="button" class="link" aria-label={w.undo(says)} onClick={() => void takeBack(id, entry.id)}>
        {words.undo}
      </button>
    </li>
  )
}

// Thumbnail is a photograph, small; it leads to itself, large.
function Thumbnail({ entry, says }: { entry: LogEvent; says: string }) {
  const at = `/api/photographs/${encodeURIComponent(entry.id)}`
  return (
    <a class="thumbnail" href={at} target="_blank" rel="noopener" aria-label={w.open(says)}>
      <img src={at} alt="" width={96} height={96} loading="lazy" decoding="async" />
    </a>
  )
}
