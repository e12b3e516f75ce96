import { numbers, valueAt } from '../doc'
import { Field, setNow } from '../field'
import type { Order, Run } from '../kinds_doc'
import { textOf } from '../tree'
import { words } from '../words'
import { moved, removed, replaced, runText, withAfter } from './runs'
import { yarnNames } from './yarns'

const w = words.warp

type Props = { path: string; label: string; total: (n: number) => string }

// Stripes is an order of yarns: a ribbon of colour to see, items with counts to change,
// and the order itself to type. All three are one text.
export function Stripes({ path, label, total }: Props) {
  const order = numbers.value?.orders[path]
  const text = textOf(valueAt(path))
  return (
    <div class="stripes">
      {order && order.whole.length > 0 && <Ribbon order={order} total={total} />}
      <Field path={path} label={label} wide />
      {order && order.typed === text && order.runs.length > 0 ? <Runs path={path} order={order} /> : null}
      {text === '' && <Begin path={path} />}
    </div>
  )
}

function Begin({ path }: { path: string }) {
  const first = yarnNames()[0]
  if (!first) return null
  return (
    <p class="soft">
      {w.stripesNone}{' '}
      <button type="button" class="link" onClick={() => setNow(path, `${first} 12`)}>
        {w.runAdd}
      </button>
    </p>
  )
}

const colourOf = (yarn: string): string => numbers.value?.yarns.find((y) => y.name === yarn)?.colour ?? '#cccccc'

// Ribbon is the whole order to scale, from the left.
function Ribbon({ order, total }: { order: Order; total: Props['total'] }) {
  const sum = order.whole.reduce((n, run) => n + run.count, 0)
  let at = 0
  return (
    <figure class="ribbon">
      <svg viewBox={`0 0 ${sum} 10`} preserveAspectRatio="none" aria-hidden="true">
        {order.whole.map((run, i) => {
          const x = at
          at += run.count
          return <rect key={i} x={x} y="0" width={run.count} height="10" fill={colourOf(run.yarn)} />
        })}
      </svg>
      <figcaption class="soft">{total(order.total)}</figcaption>
    </figure>
  )
}

// Runs are the items of the order, each with its yarn and its count.
function Runs({ path, order }: { path: string; order: Order }) {
  const set = (text: string) => setNow(path, text)
  const yarns = yarnNames()
  return (
    <ol class="runs" role="list">
      {order.runs.map((run, i) => (
        <li key={i} class={run.depth > 0 ? 'inner' : ''}>
          <span class="swatch" style={{ background: colourOf(run.yarn ?? '') }} aria-hidden="true" />
          <select
            aria-label={w.runYarn(i + 1)}
            value={run.yarn}
            onChange={(event) => set(replaced(order, i, { ...run, yarn: event.currentTarget.value }))}
          >
            {(run.yarn && !yarns.includes(run.yarn) ? [run.yarn, ...yarns] : yarns).map((name) => (
              <option key={name} value={name}>
                {name}
              </option>
            ))}
          </select>
          <input
            type="text"
            inputMode="numeric"
            aria-label={w.runCount(i + 1)}
            value={String(run.count)}
            onChange={(event) => changeCount(event.currentTarget, order, i, set)}
          />
          <span class="soft run-about">{aboutOf(run)}</span>
          <RunButtons i={i} order={order} set={set} />
        </li>
      ))}
    </ol>
  )
}

// changeCount takes a whole number; anything else goes back to what it was.
function changeCount(field: HTMLInputElement, order: Order, i: number, set: (text: string) => void): void {
  const run = order.runs[i]
  const count = Number(field.value)
  if (!run) return
  if (Number.isInteger(count) && count > 0) set(replaced(order, i, { ...run, count }))
  else field.value = String(run.count)
}

function aboutOf(run: Run): string {
  const parts = [run.density ?? '', run.depth > 0 ? (run.times ? w.repeats(run.times) : w.inBrackets) : '']
  return parts.filter((part) => part !== '').join(', ')
}

function RunButtons({ i, order, set }: { i: number; order: Order; set: (text: string) => void }) {
  const yarns = yarnNames()
  const run = order.runs[i]
  const other = yarns.find((name) => name !== run?.yarn) ?? yarns[0] ?? ''
  return (
    <span class="run-buttons">
      {i > 0 && (
        <button type="button" class="small" aria-label={w.runLeft(i + 1)} onClick={() => set(moved(order, i))}>
          ↑
        </button>
      )}
      <button type="button" class="small" aria-label={w.runAfter(i + 1)} onClick={() => set(withAfter(order, i, runText({ yarn: other, count: 4 })))}>
        +
      </button>
      <button type="button" class="small" aria-label={w.runRemove(i + 1)} onClick={() => set(removed(order, i))}>
        ×
      </button>
    </span>
  )
}
