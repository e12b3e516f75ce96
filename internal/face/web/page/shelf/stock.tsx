import { useSignal } from '@preact/signals'
import { ask } from '../ask'
import { doc } from '../doc'
import { Set } from '../figure'
import { heard } from '../heard'
import { Select, Text } from '../inputs'
import type { Problem } from '../kinds'
import { FigureLine } from '../lines'
import { Link } from '../link'
import { ProblemList } from '../problems'
import { refresh } from '../refresh'
import { freshId, windowId } from '../window'
import { words } from '../words'
import type { StockEvent } from './kinds'
import { events, shelved } from './read'
import { Amounts, Left, Promised } from './yarns'

const s = words.shelf

// StockGroup is what is there, what of it is promised, and what happened to it.
export function StockGroup() {
  const now = doc.value
  const known = shelved.value
  if (!now || !known) return null
  return (
    <section>
      <h2>{s.stock}</h2>
      <ul class="lines" role="list">
        <FigureLine says={s.inStock}>{known.stock ? <span class="amounts"><Amounts of={known.stock} /></span> : <span class="soft">{s.unknown}</span>}</FigureLine>
        <FigureLine says={s.left}>
          <Left yarn={known} />
        </FigureLine>
      </ul>
      <h3>{s.promised}</h3>
      <Promised yarn={known} />
      <Happened id={now.id} />
      <History />
    </section>
  )
}

const whats = ['bought', 'used', 'measured', 'lost'] as const

// Happened writes down what happened to the stock.
function Happened({ id }: { id: number }) {
  const what = useSignal<string>('bought')
  const typed = useSignal('')
  const note = useSignal('')
  const warp = useSignal('')
  const wrong = useSignal<Problem[]>([])
  const send = async () => {
    const of = what.value === 'used' && warp.value ? { warp: Number(warp.value) } : {}
    const body = { id: freshId(), window: await windowId, what: what.value, typed: typed.value, note: note.value, ...of }
    const answer = await ask(`/api/documents/${id}/stock`, body)
    wrong.value = answer.is === 'problems' ? answer.problems : []
    if (answer.is === 'problems' || !heard(answer)) return
    typed.value = note.value = ''
    await refresh()
  }
  const warps = (shelved.value?.promised ?? []).map((one) => [String(one.id), one.name] as const)
  return (
    <form
      class="stock-form"
      aria-label={s.happened}
      onSubmit={(event) => {
        event.preventDefault()
        void send()
      }}
    >
      <div class="fields">
        <Select id="stock-what" label={s.happened} value={what.value} choices={whats.map((one) => [one, s.stockWhat[one]])} set={(to) => (what.value = to)} />
        <Text id="stock-amount" label={s.amount} placeholder="8 oz, 1450 m" value={typed.value} set={(to) => (typed.value = to)} />
        {what.value === 'used' && <Select id="stock-warp" label={s.usedFor} none={s.usedForNone} value={warp.value} choices={warps} set={(to) => (warp.value = to)} />}
        <Text id="stock-note" label={words.warp.note} value={note.value} set={(to) => (note.value = to)} />
      </div>
      <div class="cares" role="status">
        <ProblemList of={wrong.value} />
      </div>
      <button type="submit" class="plain">
        {s.writeDown}
      </button>
    </form>
  )
}

function History() {
  const gone = new globalThis.Set(events.value.map((e) => e.cancels))
  const all = events.value.filter((e) => !e.cancels).reverse()
  if (all.length === 0) return <p class="soft">{s.stockNone}</p>
  return (
    <>
      <h3>{s.history}</h3>
      <ol class="log" role="list">
        {all.map((event) => (
          <Entry key={event.id} event={event} cancelled={gone.has(event.id)} />
        ))}
      </ol>
    </>
  )
}

function Entry({ event, cancelled }: { event: StockEvent; cancelled: boolean }) {
  const cancel = async () => {
    if (heard(await ask(`/api/events/${event.id}/cancel`, { window: await windowId, note: '' }))) await refresh()
  }
  const what = s.stockWas[event.what] ?? event.says
  return (
    <li>
      <time class="soft" dateTime={event.at}>
        {words.day(event.at)}
      </time>
      <span>
        <span class={cancelled ? 'cancelled' : ''}>
          {what} <Set text={event.typed ?? ''} />
          {event.note ? `: ${event.note}` : ''}
        </span>
        {cancelled ? ` (${words.warp.cancelled})` : ''} {event.warp ? <Link to={{ page: 'warp', id: event.warp, stage: 'cloth' }}>{warpName(event.warp)}</Link> : null}
      </span>
      {!cancelled && (
        <button type="button" class="link" aria-label={s.takeBackOf(`${what} ${event.typed ?? ''}`)} onClick={() => void cancel()}>
          {s.takeBack}
        </button>
      )}
    </li>
  )
}

const warpName = (id: number): string => shelved.value?.promised.find((one) => one.id === id)?.name ?? s.theWarp
