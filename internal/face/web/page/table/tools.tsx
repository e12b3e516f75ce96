import { words } from '../words'
import { dyeNames, hasTable, palette, treadled } from './facts'
import type { Table } from './cloth'
import { colour, tool, way, type Tool } from './hold'
import { draw, fixed, table, uncoloured } from './session'
import { view } from './sight'
import type { Splices } from './splice'
import { fitting, larger, smaller, zoomedAt } from './view'

const w = words.table

// Tools is what the hand may hold, and what is done to a chosen stretch.
export function Tools() {
  return (
    <div class="table-tools" role="toolbar" aria-label={w.tools}>
      {(['draw', 'choose', 'move'] as const).map((one) => (
        <Hold key={one} one={one} />
      ))}
      <span class="apart" />
      {(['line', 'toggle'] as const).map((one) => (
        <button key={one} type="button" class="plain" aria-pressed={way.value === one} title={w.waySays[one]} onClick={() => (way.value = one)}>
          {w.ways[one]}
        </button>
      ))}
      <span class="apart" />
      <Zoom />
    </div>
  )
}

const Hold = ({ one }: { one: Tool }) => (
  <button type="button" class="plain" aria-pressed={tool.value === one} onClick={() => (tool.value = one)}>
    {w.hold[one]}
  </button>
)

function Zoom() {
  const to = (cell: (now: number) => number) => {
    const now = view.value
    if (now) view.value = zoomedAt(now, cell(now.cell), now.sight.room.width / now.sight.room.ratio / 2, now.sight.room.height / now.sight.room.ratio / 2)
  }
  return (
    <>
      <button type="button" class="plain" aria-label={w.smaller} onClick={() => to(smaller)}>
        −
      </button>
      <button type="button" class="plain" aria-label={w.larger} onClick={() => to(larger)}>
        +
      </button>
      <button type="button" class="plain" onClick={() => view.value && (view.value = fitting(view.value.sight))}>
        {w.fit}
      </button>
    </>
  )
}

// Dyes are the colours to hold.
export function Dyes() {
  if (palette.value.length === 0) return null
  if (uncoloured.value) return <p class="soft">{w.uncoloured}</p>
  return (
    <fieldset class="dyes">
      <legend>{w.colours}</legend>
      {palette.value.map((hex, i) => (
        <label key={i}>
          <input type="radio" name="dye" checked={colour.value === i} onChange={() => (colour.value = i)} />
          <span class="swatch" style={{ background: hex }} /> {dyeNames.value[i] ?? w.dyeSays(i, hex)}
        </label>
      ))}
    </fieldset>
  )
}

// withTable does something with the draft as it is when a button is pressed.
export function withTable(act: (of: Table) => unknown): void {
  const of = table.peek()
  if (of) act(of)
}

// More adds threads at the end of a list.
export function More() {
  if (!hasTable.value || fixed.value) return null
  const add = (part: 'threading' | 'treadling' | 'lifts'): void => withTable((of) => {
    const n = part === 'threading' ? of.threading.length : of[part].lo.length
    const put = part === 'threading' ? [1] : ['1']
    draw([{ do: 'put', part, at: n, remove: 0, put }], { [part]: { at: n, remove: 0, put } } as Splices)
  })
  const picked = treadled.value ? 'treadling' : 'lifts'
  return (
    <p class="buttons">
      <button type="button" class="plain" onClick={() => add('threading')}>{w.addEnd}</button>
      <button type="button" class="plain" onClick={() => add(picked)}>{w.addPick}</button>
      <button type="button" class="plain" onClick={() => withTable((of) => draw([{ do: 'shafts', number: of.shafts + 1 }]))}>{w.addShaft}</button>
      {picked === 'treadling' && <button type="button" class="plain" onClick={() => withTable((of) => draw([{ do: 'treadles', number: of.treadles + 1 }]))}>{w.addTreadle}</button>}
      <button type="button" class="plain" onClick={() => draw([{ do: 'change', name: picked === 'treadling' ? 'lift-plan' : 'treadles' }])}>{picked === 'treadling' ? w.toLifts : w.toTreadles}</button>
    </p>
  )
}
