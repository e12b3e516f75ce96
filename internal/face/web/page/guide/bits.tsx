import { Set } from '../figure'
import { Link } from '../link'
import { demos } from './demo'
import { type Bit, bitsOf } from './prose'
import { Term } from '../term'

// Bits shows a text with what leads elsewhere. Plain, as in a note or the glossary, its
// terms are links to the glossary and open nothing.
export function Bits({ text, plain }: { text: string; plain?: boolean }) {
  return (
    <>
      {bitsOf(text).map((bit, i) => (
        <OneBit key={i} of={bit} plain={plain === true} />
      ))}
    </>
  )
}

function OneBit({ of, plain }: { of: Bit; plain: boolean }) {
  if ('to' in of) return <Link to={of.to}>{of.text}</Link>
  if ('demo' in of) {
    const id = demos.value[of.demo]?.id
    return id ? <Link to={{ page: 'warp', id, stage: of.stage }}>{of.text}</Link> : <em>{of.text}</em>
  }
  if (!('term' in of)) return <Set text={of.text} />
  return plain ? <Link to={{ page: 'glossary', term: of.term }}>{of.text}</Link> : <Term of={of.term}>{of.text}</Term>
}
