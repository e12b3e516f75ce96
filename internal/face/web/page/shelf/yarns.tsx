import { Set } from '../figure'
import { Link } from '../link'
import { More, Search } from '../search'
import { words } from '../words'
import { AddYarn, adding } from './add_yarn'
import type { Shelved } from './kinds'
import { yarns } from './read'

const s = words.shelf

// YarnsPage is the shelf: every yarn with what of it is there, promised and left.
export function YarnsPage() {
  const { items, total, query } = yarns
  const empty = items.value !== null && total.value === 0 && !query.value.words
  return (
    <>
      <div class="title-row">
        <h1>{s.yarns}</h1>
        {!adding.value && !empty && (
          <button type="button" class="strong" onClick={() => (adding.value = true)}>
            {s.addYarn}
          </button>
        )}
      </div>
      {empty && <p>{s.yarnsEmpty}</p>}
      {(adding.value || empty) && <AddYarn alone={empty} />}
      {empty || (
        <>
          <Search list={yarns} found={s.yarnsFound} foundFor={s.yarnsFoundFor} label={s.searchYarns} />
          <ShelfTable />
          <More list={yarns} />
        </>
      )}
    </>
  )
}

function ShelfTable() {
  const all = yarns.items.value
  if (all === null) return <p class="soft">{words.reading}</p>
  if (all.length === 0) return <NoYarn />
  return (
    <table class="shelf" role="table">
      <caption class="hidden">{s.shelfSays}</caption>
      <thead role="rowgroup">
        <tr role="row">
          {[s.yarn, s.grist, s.inStock, s.promised, s.left].map((head) => (
            <th key={head} scope="col" role="columnheader">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody role="rowgroup">
        {all.map((yarn) => (
          <YarnRow key={yarn.id} yarn={yarn} />
        ))}
      </tbody>
    </table>
  )
}

function NoYarn() {
  return (
    <p class="none">
      {s.noYarn(yarns.query.value.words ?? '')}{' '}
      <button type="button" class="link" onClick={() => yarns.find({})}>
        {s.allYarns}
      </button>
    </p>
  )
}

// Swatch is a yarn's colour, or an empty frame where none is said.
export const Swatch = ({ colour, class: more }: { colour: string | undefined; class?: string }) => (
  <span class={`swatch ${more ?? ''} ${colour ? '' : 'bare'}`} style={{ background: colour ?? 'none' }} aria-hidden="true" />
)

function YarnRow({ yarn }: { yarn: Shelved }) {
  return (
    <tr role="row">
      <th scope="row" role="rowheader">
        <Swatch colour={yarn.colour} class="large" />
        <span class="called">
          <Link to={{ page: 'yarn', id: yarn.id }} class="quiet">
            {yarn.name}
          </Link>
          {(yarn.demo || yarn.problems > 0) && <Remark yarn={yarn} />}
        </span>
      </th>
      <td role="cell">
        <Of name={s.grist} />
        {yarn.grist ? <Set text={yarn.grist} /> : <span class="soft">{s.unknown}</span>}
      </td>
      <td role="cell">
        <Of name={s.inStock} />
        <span class="amounts">{yarn.stock ? <Amounts of={yarn.stock} /> : <span class="soft">{s.unknown}</span>}</span>
      </td>
      <td role="cell">
        <Of name={s.promised} />
        <Promised yarn={yarn} />
      </td>
      <td role="cell">
        <Of name={s.left} />
        <Left yarn={yarn} />
      </td>
    </tr>
  )
}

// Of is the head of a column where the table is too narrow to have any.
const Of = ({ name }: { name: string }) => (
  <span class="of" aria-hidden="true">
    {name}
  </span>
)

function Remark({ yarn }: { yarn: Shelved }) {
  return (
    <span class="soft remark">
      {yarn.demo && words.fromDemo}
      {yarn.problems > 0 && <span class="care">{words.problems(yarn.problems)}</span>}
    </span>
  )
}

export function Amounts({ of }: { of: NonNullable<Shelved['stock']> }) {
  const said = [of.length, of.weight].filter((one) => one !== undefined)
  if (said.length === 0) return <span class="soft">{of.says}</span>
  return (
    <>
      {said.map((one) => (
        <span key={one}>
          <Set text={one} />
        </span>
      ))}
    </>
  )
}

export function Promised({ yarn }: { yarn: Shelved }) {
  if (yarn.promised.length === 0) return <span class="soft">{s.toNone}</span>
  return (
    <ul class="promised" role="list">
      {yarn.promised.map((one) => (
        <li key={one.id}>
          <Link to={{ page: 'warp', id: one.id, stage: 'cloth' }}>{one.name}</Link>{' '}
          <span>
            <Set text={one.says} />
          </span>
        </li>
      ))}
    </ul>
  )
}

export function Left({ yarn }: { yarn: Shelved }) {
  if (!yarn.left) return <span class="soft">{s.unknown}</span>
  return (
    <span class={yarn.left.short ? 'care' : ''}>
      <Set text={yarn.left.says} />
    </span>
  )
}
