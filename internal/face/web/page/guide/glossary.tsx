import { useLayoutEffect } from 'preact/hooks'
import { useSignal } from '@preact/signals'
import { moved } from '../place'
import { words } from '../words'
import { Bits } from './bits'
import { Parts } from './page'
import { found } from './terms'

const w = words.guide

// Glossary are the words of the trade. Each stands at its own address, as /glossary#sett.
export function Glossary() {
  const sought = useSignal('')
  useLayoutEffect(() => {
    sought.value = '' // what is gone to may be hidden by a search
  }, [moved.value])
  const shown = found(sought.value)
  return (
    <div class="guided">
      <Parts now="glossary" />
      <article>
        <h1>{words.glossary}</h1>
        <p class="soft">{w.glossarySays}</p>
        <SearchTerms sought={sought.value} found={shown.length} seek={(text) => (sought.value = text)} />
        {shown.length > 0 ? <Terms of={shown} /> : <NoTerm sought={sought.value} all={() => (sought.value = '')} />}
      </article>
    </div>
  )
}

function SearchTerms({ sought, found, seek }: { sought: string; found: number; seek: (text: string) => void }) {
  return (
    <div class="tools">
      <form role="search" onSubmit={(event) => event.preventDefault()}>
        <label for="search">{words.search}</label>
        <input id="search" type="search" autocomplete="off" spellcheck={false} value={sought} onInput={(event) => seek(event.currentTarget.value)} />
      </form>
      <p class="count" role="status">
        {w.terms(found)}
      </p>
    </div>
  )
}

const Terms = ({ of }: { of: ReturnType<typeof found> }) => (
  <dl class="terms">
    {of.map(([key, { term, means }]) => (
      <div key={key}>
        <dt id={key} tabIndex={-1}>
          {term}
        </dt>
        <dd>
          <Bits text={means} plain />
        </dd>
      </div>
    ))}
  </dl>
)

function NoTerm({ sought, all }: { sought: string; all: () => void }) {
  return (
    <p class="none">
      {w.noTerm(sought)}{' '}
      <button type="button" class="link" onClick={all}>
        {w.allTerms}
      </button>
    </p>
  )
}
