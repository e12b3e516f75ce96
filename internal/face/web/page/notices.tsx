import { useRef } from 'preact/hooks'
import { useSignal } from '@preact/signals'
import { clearDemo } from './deeds'
import type { Fault } from './kinds'
import { Link } from './link'
import { Sentence } from './problems'
import { refresh } from './refresh'
import { book, line, mishap } from './state'
import { words } from './words'

// LineNotice says that the server is gone, or lets this window in no more.
export function LineNotice() {
  const gone = line.value === 'gone'
  return (
    <div role="status">
      {line.value !== 'up' && (
        <div class="notice">
          <p class="title">{gone ? words.goneHead : words.refusedHead}</p>
          <p>{gone ? words.goneSays : words.refusedSays}</p>
          <button type="button" class="plain" onClick={() => void refresh()}>
            {words.again}
          </button>
        </div>
      )}
    </div>
  )
}

// MishapNotice is for what went wrong with no field to stand beside.
export function MishapNotice() {
  const now = mishap.value
  return (
    <div role="alert">
      {now && (
        <div class="notice">
          {'fault' in now ? <FaultText fault={now.fault} id="fault" /> : <Sentence says={now.trouble.says} fix={now.trouble.fix} />}
          <button type="button" class="plain" onClick={() => (mishap.value = null)}>
            {words.put}
          </button>
        </div>
      )}
    </div>
  )
}

// FaultText shows a fault of ours with the report to copy. Where a page may not write
// to the clipboard the report is marked instead.
export function FaultText({ fault, id }: { fault: Fault; id: string }) {
  const report = useRef<HTMLTextAreaElement>(null)
  const copied = useSignal('')
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(fault.report)
      copied.value = words.copied
    } catch {
      report.current?.select()
      copied.value = words.copyYourself
    }
  }
  return (
    <div class="fault">
      <p class="sentence">
        <strong>{fault.says}</strong>
      </p>
      <p>{words.faultNext}</p>
      <label for={id}>{words.faultReport}</label>
      <textarea id={id} ref={report} readOnly rows={4} value={fault.report} />
      <p class="buttons">
        <button type="button" class="plain" onClick={() => void copy()}>
          {words.copy}
        </button>
        <span role="status">{copied.value}</span>
      </p>
    </div>
  )
}

export function Demo() {
  if (!book.value?.demo) return null
  return (
    <p class="note">
      {words.demoSays} <Link to={{ page: 'guide', part: 'begin' }}>{words.demoGuide}</Link>{' '}
      <button type="button" class="link" onClick={() => void clearDemo()}>
        {words.clearDemo}
      </button>
    </p>
  )
}

// Empty says what goes where in a book that holds nothing yet.
export function Empty() {
  return (
    <section id="warps" class="empty">
      <h2>{words.emptyHead}</h2>
      <p>{words.emptySays}</p>
      <dl>
        {words.emptyParts.map(([name, says, place]) => (
          <div key={name}>
            <dt>
              <Link to={place}>{name}</Link>
            </dt>
            <dd>{says}</dd>
          </div>
        ))}
      </dl>
      <p class="onward">
        {words.emptyGuide} <Link to={{ page: 'guide', part: 'piece' }}>{words.emptyGuideLink}</Link>
        {words.emptyUnits} <Link to={{ page: 'units' }}>{words.units}</Link>.
      </p>
    </section>
  )
}

// Nowhere is for an address that leads to nothing.
export function Nowhere() {
  return (
    <>
      <h1>{words.nowhere}</h1>
      <p>
        {words.nowhereSays} <Link to={{ page: 'bench' }}>{words.toBench}</Link>
      </p>
    </>
  )
}

export function Foot() {
  if (!book.value) return null
  const { place, yarns, looms, drafts, program } = book.value
  return (
    <footer class="foot">
      <p>
        {yarns + looms + drafts > 0 && words.shelves(yarns, looms, drafts)}{' '}
        <span class="path">{words.bookAt(place)}</span>
      </p>
      <p>
        <Link to={{ page: 'beside' }}>{words.beside.title}</Link>
        {' · '}
        <Link to={{ page: 'units' }}>{words.units}</Link>
        {' · '}
        <Link to={{ page: 'glossary' }}>{words.glossary}</Link>
        {' · '}
        {words.program} {program}
        {' · '}
        <a href={licences()}>{words.licences}</a>
      </p>
    </footer>
  )
}

// licences is where the licences of what the page is made of stand: the bundler, which
// knows the address, writes it into the head of the page.
const licences = () => document.querySelector<HTMLLinkElement>('link[rel=license]')?.href ?? ''
