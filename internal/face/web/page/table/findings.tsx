import { words } from '../words'
import type { Region } from './bands'
import { isDrawable } from './cursor'
import type { Area as Seen } from './hit'
import { looms } from './beside'
import { draw, findings, fixed, look, loom, start, use, uses, type Area, type Finding, type Remedy } from './session'
import { cursor, found, view } from './sight'
import { jumpedTo } from './view'
import { Select } from '../inputs'

const w = words.table

// Findings are what there is to tell of the draft, each with the way there and what mends it.
export function Findings({ shelf }: { shelf: boolean }) {
  const all = findings.value
  return (
    <section class="findings" aria-labelledby="findings-head">
      <h2 id="findings-head">{w.findings}</h2>
      <div class="fields">
        <Select id="table-use" label={w.use} none={w.anyUse} value={use.value} choices={uses.value.map((one) => [one, w.uses[one] ?? one])} set={(to) => ((use.value = to), void look())} />
        <Select id="table-start" label={w.start} none={w.anyStart} value={start.value} choices={[['left', w.fromLeft], ['right', w.fromRight]]} set={(to) => ((start.value = to), void look())} />
        {shelf && looms.value.length > 0 && <Select id="table-loom" label={w.loom} none={w.anyLoom} value={loom.value} choices={looms.value.map((one) => [String(one.id), one.name])} set={(to) => ((loom.value = to), void look())} />}
      </div>
      <p class="soft" role="status">
        {all.length === 0 ? w.nothing : w.many(all.length)}
      </p>
      <ul class="problem-list" role="list">
        {all.map((one, i) => (
          <Item key={`${one.topic}-${i}`} of={one} />
        ))}
      </ul>
    </section>
  )
}

const Item = ({ of }: { of: Finding }) => (
  <li class={of.severity === 'note' ? 'slight' : ''}>
    <p class="sentence">{of.says}</p>
    {of.means && <p class="soft sentence">{of.means}</p>}
    <p class="buttons">
      {of.place && (
        <button type="button" class="link" onClick={() => goTo(of.place as Area)}>
          {w.goThere}
        </button>
      )}
      {!fixed.value && of.remedies.map((remedy) => <Mend key={remedy.says} of={remedy} />)}
    </p>
  </li>
)

function Mend({ of }: { of: Remedy }) {
  if (of.acts.length === 0 && !of.swap) return <span class="soft sentence">{of.says}</span>
  const mend = (): void => {
    if (of.swap) {
      start.value = start.value === 'right' ? 'left' : 'right'
      void look()
    }
    draw(of.acts)
  }
  return (
    <button type="button" class="link sentence" onClick={mend}>
      {of.says}
    </button>
  )
}

// goTo brings a place in sight and points it out.
export function goTo({ part, ends, picks, numbers }: Area): void {
  const at: Region = part && isDrawable(part) ? part : 'drawdown'
  const counted = at === 'ties' && numbers ? ([Math.min(...numbers), Math.max(...numbers) + 1] as const) : undefined
  const area: Seen = { part: at, ...(ends ? { ends } : {}), ...(picks ? { picks } : {}), ...(counted ? { treadles: counted } : {}) }
  found.value = [area]
  cursor.value = { part: at, ...(ends ? { end: ends[0] } : {}), ...(picks ? { pick: picks[0] } : {}), ...(counted ? { treadle: counted[0] } : {}), shaft: 1 }
  const now = view.value
  if (now) view.value = jumpedTo(now, { ...(ends ? { end: ends[0] } : {}), ...(picks ? { pick: picks[0] } : {}) })
  document.querySelector<HTMLElement>('.draft-table')?.focus()
}
