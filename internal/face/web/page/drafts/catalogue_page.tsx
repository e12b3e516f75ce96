import { Link } from '../link'
import { words } from '../words'
import { families, family, isSeeking, lookAt, most, open, shown, sought, weaves } from './catalogue'
import { Looked } from './looked'
import type { Weave } from './weave'

const w = words.draft

// Catalogue are the weaves by their families; one opens in its place.
export function Catalogue() {
  return (
    <>
      <p class="above">
        <Link to={{ page: 'drafts' }}>{w.heading}</Link>
      </p>
      <h1>{w.catalogue}</h1>
      <p class="soft hint">{w.catalogueSays}</p>
      <Seek />
      <div class="catalogue-columns">
        <Families />
        <Weaves />
      </div>
    </>
  )
}

function Seek() {
  return (
    <div class="tools">
      <form role="search" onSubmit={(event) => event.preventDefault()}>
        <label for="search">{words.search}</label>
        <input id="search" type="search" autocomplete="off" spellcheck={false} value={sought.value} onInput={(event) => (sought.value = event.currentTarget.value)} />
      </form>
      <p class="inline-field">
        <label for="most-shafts">{w.shaftsAtMost}</label>
        <input
          id="most-shafts"
          type="text"
          inputMode="numeric"
          autocomplete="off"
          maxLength={3}
          value={most.value}
          onInput={(event) => (most.value = event.currentTarget.value.replace(/\D/g, ''))}
        />
      </p>
      <p class="count" role="status">
        {weaves.value && w.weavesFound(shown.value.length)}
      </p>
    </div>
  )
}

const count = (of: string): number => (weaves.value ?? []).filter((weave) => weave.family === of).length

function chooseFamily(of: string): void {
  family.value = of
  sought.value = ''
  most.value = ''
}

function Families() {
  return (
    <nav class="families" aria-label={w.families}>
      <ul role="list">
        {families.value.map(([id, says]) => (
          <li key={id}>
            <button type="button" class="link" aria-pressed={!isSeeking.value && family.value === id} onClick={() => chooseFamily(id)}>
              <span>{says}</span> <span class="soft">{count(id)}</span>
            </button>
          </li>
        ))}
      </ul>
    </nav>
  )
}

function Weaves() {
  if (!weaves.value) return <p class="soft">{words.reading}</p>
  if (shown.value.length === 0) {
    return (
      <p class="none">
        {w.noWeave}{' '}
        <button type="button" class="link" onClick={() => chooseFamily(family.value)}>
          {w.allWeaves}
        </button>
      </p>
    )
  }
  return (
    <ul class="weaves" role="list">
      {shown.value.map((weave) => (
        <WeaveRow key={weave.id} weave={weave} />
      ))}
    </ul>
  )
}

function WeaveRow({ weave }: { weave: Weave }) {
  const isOpen = open.value === weave.id
  return (
    <li class={isOpen ? 'open' : ''}>
      <button type="button" class="weave-row" aria-expanded={isOpen} onClick={() => lookAt(weave.id)}>
        <span class="weave-cloth">
          <img src={`/api/weaves/${weave.id}/cloth`} alt="" loading="lazy" />
        </span>
        <span class="weave-name">{weave.name}</span>{' '}
        <span class="soft">{w.threads(weave.shafts, weave.treadles)}</span>
      </button>
      {isOpen && <Looked weave={weave} />}
    </li>
  )
}
