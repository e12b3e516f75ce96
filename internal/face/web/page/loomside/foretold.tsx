import { useSignal } from '@preact/signals'
import { ask } from '../ask'
import { Set } from '../figure'
import { heard } from '../heard'
import { Select } from '../inputs'
import { refresh } from '../refresh'
import { windowId } from '../window'
import { words } from '../words'
import { Amending } from './amending'
import type { Loom, LoomSaid, Weaving } from './kinds'
import { OneLine } from './one_line'
import { move, tellLoom } from './state'
import type { Where } from './where'

const w = words.loomside

type Props = { now: Loom; weaving: Weaving; at: Where; woven: number }

// Foretold is how it will come out, and what is said of tape, yarn and pieces.
export function Foretold({ now, weaving, at, woven }: Props) {
  return (
    <>
      {now.remedies.length > 0 && (
        <div class="care loom-remedies">
          <p>{w.short}</p>
          <ul role="list">
            {now.remedies.map((one) => (
              <li key={one}>
                <Set text={one} />
              </li>
            ))}
          </ul>
        </div>
      )}
      <details class="loom-more" open>
        <summary>{w.foretold}</summary>
        <dl class="loom-figures">
          {now.forecast.map((f) => (
            <div key={f.id}>
              <dt>{f.says}</dt>
              <dd>
                <b>
                  <Set text={f.value} />
                </b>
                {f.note && (
                  <span class="soft">
                    {' '}
                    <Set text={f.note} />
                  </span>
                )}
              </dd>
            </div>
          ))}
        </dl>
        <Tape woven={woven} reads={weaving.reads} />
        <Scale weaving={weaving} />
        <Said list={now.said} />
      </details>
      <details class="loom-more">
        <summary>{w.more}</summary>
        <Jump weaving={weaving} />
        <Ended now={now} at={at} woven={woven} />
      </details>
      <Amending id={now.id} />
    </>
  )
}

// Tape writes down what the tape reads now.
const Tape = ({ woven, reads }: { woven: number; reads: string }) => (
  <OneLine id="loom-tape" label={w.tapeReads(reads)} button={w.write} placeholder="17 1/4 in" send={(typed) => tellLoom('tape', { typed, pick: woven })} />
)

// Scale writes down what is left of a yarn.
function Scale({ weaving }: { weaving: Weaving }) {
  const yarn = useSignal(weaving.yarns[0]?.name ?? '')
  const several = weaving.yarns.length > 1
  return (
    <OneLine id="loom-scale" label={w.weighIn(several ? '' : yarn.value)} button={w.write} placeholder="180 g" send={(typed) => tellLoom('weighed', { yarn: yarn.value, typed })}>
      {several && <Select id="loom-yarn" label={w.yarn} value={yarn.value} choices={weaving.yarns.map((y) => [y.name, y.name])} set={(to) => (yarn.value = to)} />}
    </OneLine>
  )
}

// Said lists readings and weighings, each to be taken back.
function Said({ list }: { list: LoomSaid[] }) {
  if (list.length === 0) return null
  return (
    <ol class="loom-said" role="list">
      {[...list].reverse().map((one) => (
        <li key={one.id}>
          <span>{w.saidAt(one.says, one.of ?? '', one.typed, one.pick)}</span>
          <TakeBack id={one.id} says={one.typed} />
        </li>
      ))}
    </ol>
  )
}

function TakeBack({ id, says }: { id: string; says: string }) {
  const cancel = async () => {
    heard(await ask(`/api/events/${id}/cancel`, { window: await windowId, note: '' }))
    await refresh()
  }
  return (
    <button type="button" class="link" aria-label={words.warp.cancel(says)} onClick={() => void cancel()}>
      {w.takeBack}
    </button>
  )
}

// Jump sets the place.
const Jump = ({ weaving }: { weaving: Weaving }) => (
  <OneLine id="loom-pick" label={w.wovenTo(weaving.total)} button={w.setIt} number send={(typed) => move('weaving', Number(typed), true)} />
)

// Ended says that a piece ended where the weaving stands.
function Ended({ now, at, woven }: { now: Loom; at: Where; woven: number }) {
  const here = at.in > 0 ? at.number : at.number - 1
  const piece = now.weaving?.pieces[here]
  return (
    <>
      {at.in > 0 && piece && (
        <p>
          <button type="button" class="plain" onClick={() => tellLoom('chosen', { what: `ends.${here + 1}`, value: 'here' })}>
            {w.endsHere(piece.says, woven)}
          </button>
        </p>
      )}
      {now.weaving?.pieces.map((one) =>
        one.ended ? (
          <p key={one.before}>
            {w.ended(one.says)} <TakeBack id={one.ended} says={one.says} />
          </p>
        ) : null,
      )}
    </>
  )
}
