import { useSignal } from '@preact/signals'
import { act } from '../deeds'
import { doc, numbers, valueAt } from '../doc'
import { Field, Group, setNow } from '../field'
import { Link } from '../link'
import type { Origin } from '../kinds_doc'
import { at, isTable, keysOf, pathOf, textOf, under } from '../tree'
import { words } from '../words'
import { origins, shelfYarns } from './shelf'

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

// FromShelf says where a part came from, and takes the newer or puts it on the shelf.
export function FromShelf({ part, name }: { part: string; name: string }) {
  const now = doc.value
  const from = origins.value.find((o) => o.part === part)
  if (!now) return null
  return (
    <p class="soft origin">
      {from?.id ? <Whence from={from} /> : null}
      {from?.newer && (
        <>
          {' '}
          {w.newerOnShelf(from.name ?? name)}{' '}
          <button type="button" class="link" onClick={() => void act(now, 'take-newer', { part })}>
            {w.takeNewer}
          </button>
        </>
      )}{' '}
      <button type="button" class="link" aria-label={`${w.putOnShelf}: ${name}`} onClick={() => void act(now, 'put-on-shelf', { part, ...(from?.id ? {} : { name: `${name}, ${now.name}` }) })}>
        {w.putOnShelf}
      </button>
    </p>
  )
}

const pages = { yarn: 'yarn', loom: 'loom', draft: 'draft' } as const

function Whence({ from }: { from: Origin }) {
  const page = pages[from.kind as keyof typeof pages]
  const says = w.cameFrom(from.name ?? '')
  return page && from.id && !from.removed ? <Link to={{ page, id: from.id }}>{says}</Link> : <span>{says}</span>
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
  const now = doc.value
  const chosen = useSignal('')
  const name = useSignal('')
  if (!now) return null
  const choose = (id: string) => {
    chosen.value = id
    name.value = freeName(shortName(shelfYarns.value.find((y) => String(y.id) === id)?.name ?? ''))
  }
  const take = async () => {
    await act(now, 'use', { part: pathOf('yarns', name.value), shelf: Number(chosen.value) })
    chosen.value = ''
  }
  return (
    <div class="fields add">
      <div class="field">
        <label for="shelf-yarn">{w.fromShelf}</label>
        <select id="shelf-yarn" value={chosen.value} onChange={(event) => choose(event.currentTarget.value)}>
          <option value="">{w.fromShelfNone}</option>
          {shelfYarns.value.map((yarn) => (
            <option key={yarn.id} value={String(yarn.id)}>
              {yarn.name}
            </option>
          ))}
        </select>
      </div>
      {chosen.value !== '' && (
        <div class="field">
          <label for="yarn-name">{w.yarnAs}</label>
          <input id="yarn-name" type="text" value={name.value} onInput={(event) => (name.value = event.currentTarget.value)} />
        </div>
      )}
      <p class="field act buttons">
        {chosen.value !== '' && (
          <button type="button" class="plain" onClick={() => void take()}>
            {w.takeYarn}
          </button>
        )}
        <button type="button" class="link" onClick={() => setNow(pathOf('yarns', freeName('yarn')), { count: '8/2 Ne' })}>
          {w.newYarn}
        </button>
      </p>
    </div>
  )
}
