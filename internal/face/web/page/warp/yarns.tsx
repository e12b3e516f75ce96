import { useSignal } from '@preact/signals'
import { doc, numbers, valueAt } from '../doc'
import { Field, Group, setNow } from '../field'
import { Text } from '../inputs'
import { at, isTable, keysOf, pathOf, textOf, under } from '../tree'
import { words } from '../words'
import { FromShelf, FromShelfChoice } from './from_shelf'
import { shelfYarns } from './shelf'

const w = words.warp

// yarnNames are the yarns of the open warp, in its order.
export const yarnNames = (): string[] => keysOf({ yarns: valueAt('yarns') ?? {} }, 'yarns')

export const yarnChoices = (): (readonly [string, string])[] => yarnNames().map((name) => [name, name] as const)

// Yarns are those of this warp: each is its own copy, which the shelf never changes.
export function Yarns() {
  return (
    <Group title={w.yarns} says={w.yarnsSays}>
      {yarnNames().map((name) => (
        <YarnFields key={name} name={name} />
      ))}
      <AddYarn />
    </Group>
  )
}

function YarnFields({ name }: { name: string }) {
  const path = pathOf('yarns', name)
  const colour = numbers.value?.yarns.find((y) => y.name === name)?.colour
  const more = ['wraps', 'put-up', 'price', 'stock', 'skein'].some((key) => (valueAt(under(path, key)) ?? null) !== null)
  return (
    <fieldset class="entry">
      <legend>
        <span class="swatch" style={{ background: colour ?? 'none' }} aria-hidden="true" /> {name}
      </legend>
      <div class="fields">
        <Field path={under(path, 'count')} label={w.yarnCount} hint={w.yarnCountHint} />
        <Field path={under(path, 'fibre')} label={w.fibre} />
        <Colour path={under(path, 'colour')} colour={colour} name={name} />
      </div>
      <details open={more && !at(doc.value?.plan, under(path, 'count'))}>
        <summary>{w.moreYarn}</summary>
        <div class="fields">
          <Field path={under(path, 'wraps')} label={w.wraps} hint={w.wrapsHint} />
          <Field path={under(path, 'put-up')} label={w.putUp} />
          <Field path={under(path, 'price')} label={w.price} />
          <Field path={under(path, 'stock')} label={w.stock} />
          {isTable(valueAt(under(path, 'skein'))) && <Field path={under(path, 'skein')} label={words.shelf.skein} />}
        </div>
      </details>
      <FromShelf part={path} name={name} />
      <button type="button" class="link" onClick={() => setNow(path, null)}>
        {w.removeYarn(name)}
      </button>
    </fieldset>
  )
}

// Colour is typed as a name or figures, or picked.
export function Colour({ path, colour, name }: { path: string; colour: string | undefined; name: string }) {
  const pick = (figures: string) => {
    const typed = textOf(valueAt(path)).replace(/\s*#[0-9a-f]{3,8}\b/i, '').trim()
    setNow(path, typed ? `${typed} ${figures}` : figures)
  }
  return (
    <div class="colour">
      <Field path={path} label={w.colour} hint={w.colourHint} />
      <input type="color" aria-label={w.colourOf(name)} value={colour ?? '#cccccc'} onChange={(event) => pick(event.currentTarget.value)} />
    </div>
  )
}

// freeName is a name that no yarn of the warp has yet.
const freeName = (name: string): string => {
  const taken = new Set(yarnNames())
  for (let n = 1; ; n++) {
    const one = n === 1 ? name : `${name}-${n}`
    if (!taken.has(one)) return one
  }
}

// shortName makes a name for orders of the shelf's: its last word that can be one.
export function shortName(name: string): string {
  const found = name.toLowerCase().match(/\p{L}[\p{L}\p{N}_-]*/gu) ?? []
  const may = found.filter((one) => !['at', 'on', 'x', 'mirrored', 'none'].includes(one))
  return may.at(-1) ?? 'yarn'
}

function AddYarn() {
  const name = useSignal('')
  return (
    <FromShelfChoice
      id="shelf-yarn"
      label={w.fromShelf}
      none={w.fromShelfNone}
      shelf={shelfYarns.value}
      partOf={() => pathOf('yarns', name.value)}
      onChoose={(yarn) => (name.value = freeName(shortName(yarn?.name ?? '')))}
      other={
        <button type="button" class="link" onClick={() => setNow(pathOf('yarns', freeName('yarn')), { count: '8/2 Ne' })}>
          {w.newYarn}
        </button>
      }
    >
      <Text id="yarn-name" label={w.yarnAs} value={name.value} set={(to) => (name.value = to)} />
    </FromShelfChoice>
  )
}
