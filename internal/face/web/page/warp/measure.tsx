import { useSignal } from '@preact/signals'
import { Set } from '../figure'
import { Select, Text } from '../inputs'
import { refresh } from '../refresh'
import { words } from '../words'
import type { ToMeasure } from './after'
import { tell } from './ask'
import { record, type Size } from './record'

const w = words.warp

// Measure writes one size down, whichever it is.
export function Measure({ id, sizes }: { id: number; sizes: Size[] }) {
  const path = useSignal(sizes[0]?.path ?? '')
  const state = useSignal('finished')
  const typed = useSignal('')
  const of = sizes.find((size) => size.path === path.value)
  const known = of?.states.some((s) => s.state === state.value) ? state.value : (of?.states[0]?.state ?? '')
  const send = async () => {
    if (await tell(id, 'measurements', { path: path.value, state: known, typed: typed.value })) typed.value = ''
    await refresh()
  }
  if (!of) return null
  return (
    <form
      class="fields"
      onSubmit={(event) => {
        event.preventDefault()
        void send()
      }}
    >
      <Select id="size-what" label={w.what} value={path.value} choices={sizes.map((s) => [s.path, s.says])} set={(to) => (path.value = to)} />
      <Select id="size-state" label={w.state} value={known} choices={of.states.map((s) => [s.state, s.says])} set={(to) => (state.value = to)} />
      <Text id="size" label={w.size} placeholder="28 1/4 in" value={typed.value} set={(to) => (typed.value = to)} />
      <p class="field act">
        <button type="submit" class="strong">
          {w.enter}
        </button>
      </p>
    </form>
  )
}

// MeasureHere writes down the sizes that are measured at one step, those that were typed.
export function MeasureHere({ id, step, of }: { id: number; step: string; of: readonly ToMeasure[] }) {
  const typed = useSignal<Record<string, string>>({})
  const said = (one: ToMeasure): string => typed.value[one.path] ?? ''
  const send = async () => {
    const left: Record<string, string> = {}
    for (const one of filled(of, said)) {
      const fine = await tell(id, 'measurements', { path: one.path, state: one.state, typed: said(one) })
      if (!fine) left[one.path] = said(one)
    }
    typed.value = left
    await refresh()
  }
  if (of.length === 0) return null
  return (
    <form
      class="fields measure-here"
      onSubmit={(event) => {
        event.preventDefault()
        void send()
      }}
    >
      {of.map((one) => (
        <div key={one.path} class="field">
          <Text id={`${step}-${one.path.replace(/\W/g, '-')}`} label={one.says} value={said(one)} set={(to) => (typed.value = { ...typed.value, [one.path]: to })} />
          <p class="soft">
            <Set text={known(one)} />
          </p>
        </div>
      ))}
      <p class="field act">
        <button type="submit" class="plain" aria-label={w.enterAt(of.map((one) => one.says).join(', '))}>
          {w.enterHere}
        </button>
      </p>
    </form>
  )
}

const filled = (all: readonly ToMeasure[], said: (one: ToMeasure) => string): ToMeasure[] => all.filter((one) => said(one).trim() !== '')

// known is what was planned and what was measured already.
function known(one: ToMeasure): string {
  const state = record.value?.sizes.find((size) => size.path === one.path)?.states.find((s) => s.state === one.state)
  return [one.planned ? `${w.planned} ${one.planned}` : '', state?.measured ? `${w.measured} ${state.measured}` : ''].filter(Boolean).join('; ')
}
