import { useSignal } from '@preact/signals'
import { Text } from '../inputs'
import { words } from '../words'
import { copy, insert, paste } from './clip'
import { stretchOf } from './cursor'
import { dyeNames, hasTable } from './facts'
import { copied } from './hold'
import { draw, fixed } from './session'
import { chosen } from './sight'
import { withTable } from './tools'

const w = words.table

// Stretch is what can be done to the chosen stretch.
export function Stretch() {
  const at = stretchOf(chosen.value)
  if (!hasTable.value || fixed.value) return null
  if (!at) return <p class="soft">{w.chooseSays}</p>
  const does = (act: object): void => draw([{ ...act, part: at.part, from: at.from, to: at.to } as never])
  const threads = !at.drawable.endsWith('colours')
  return (
    <div class="stretch" key={at.part}>
      <h2 class="lesser">{w.stretch(at.drawable, at.from, at.to)}</h2>
      <div class="buttons">
        <button type="button" class="plain" onClick={() => does({ do: 'reverse' })}>{w.reverse}</button>
        <button type="button" class="plain" onClick={() => does({ do: 'mirror' })}>{w.mirror}</button>
        <button type="button" class="plain" onClick={() => does({ do: 'shift', by: 1 })}>{w.shiftUp}</button>
        <button type="button" class="plain" onClick={() => does({ do: 'shift', by: -1 })}>{w.shiftDown}</button>
        <button type="button" class="plain" onClick={() => does({ do: 'rotate', by: 1 })}>{w.rotate}</button>
        <button type="button" class="plain" onClick={() => withTable(copy)}>{w.copy}</button>
        {copied.value && <button type="button" class="plain" onClick={() => withTable(paste)}>{w.paste}</button>}
        {threads && (
          <>
            <button type="button" class="plain" onClick={() => withTable(insert)}>
              {w.insert}
            </button>
            <button type="button" class="plain" onClick={() => (does({ do: 'delete' }), (chosen.value = null))}>
              {w.remove}
            </button>
          </>
        )}
      </div>
      <Repeat does={does} />
      <TypeIn part={at.part} from={at.from} to={at.to} />
      {(at.part === 'threading' || at.part === 'treadling') && <Rule part={at.part} from={at.from} to={at.to} />}
    </div>
  )
}

type At = { part: string; from: number; to: number }

// TypeIn puts what the shorthand says in the place of the stretch.
function TypeIn({ part, from, to }: At) {
  const typed = useSignal('')
  return (
    <form
      class="fields"
      onSubmit={(event) => {
        event.preventDefault()
        if (typed.value.trim()) draw([{ do: 'type', part, from, to, text: typed.value }])
      }}
    >
      <Text id="table-type" class="wide" label={w.type} hint={part.endsWith('colours') && dyeNames.value.length === 0 ? w.lettersHint : (w.typeHint[part] ?? '')} value={typed.value} set={(text) => (typed.value = text)} />
      <p class="field act">
        <button type="submit" class="plain">
          {w.put}
        </button>
      </p>
    </form>
  )
}

// figures keeps the figures of what is typed.
const figures = (text: string): string => text.replace(/\D/g, '')

// Repeat has the stretch come several times in all.
function Repeat({ does }: { does: (act: object) => void }) {
  const times = useSignal('2')
  return (
    <form
      class="go-to"
      onSubmit={(event) => {
        event.preventDefault()
        does({ do: 'repeat', times: Number(times.value || 2) })
      }}
    >
      <label for="table-times">{w.times}</label>
      <input id="table-times" type="text" inputMode="numeric" autocomplete="off" size={3} value={times.value} onInput={(event) => (times.value = figures(event.currentTarget.value))} />
      <button type="submit" class="plain">
        {w.repeat}
      </button>
    </form>
  )
}

const ruled = ['first', 'last', 'start', 'by', 'run'] as const

// Rule lays a rule there: on all shafts, or treadles, or on those that are said.
function Rule({ part, from, to }: At) {
  const said = useSignal<Partial<Record<(typeof ruled)[number], string>>>({})
  const lay = (rule: string): void => {
    const numbers = Object.fromEntries(Object.entries(said.value).flatMap(([key, text]) => (text ? [[key, Number(text)]] : [])))
    draw([{ do: 'rule', part, from, to, rule, ...numbers }])
  }
  return (
    <>
      <p class="buttons">
        <span class="soft">{w.rule}</span>
        {(['straight', 'point', 'advancing'] as const).map((rule) => (
          <button key={rule} type="button" class="plain" onClick={() => lay(rule)}>
            {w.rules[rule]}
          </button>
        ))}
      </p>
      <details>
        <summary>{w.ruleMore}</summary>
        <div class="fields">
          {ruled.map((key) => (
            <Text key={key} id={`rule-${key}`} label={w.ruled[key](part === 'threading')} placeholder={w.ruledUsual[key]} number value={said.value[key] ?? ''} set={(text) => (said.value = { ...said.value, [key]: figures(text) })} />
          ))}
        </div>
      </details>
    </>
  )
}
