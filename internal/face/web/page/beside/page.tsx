import { useEffect } from 'preact/hooks'
import { useSignal } from '@preact/signals'
import { TickBox } from '../inputs'
import { words } from '../words'
import { Devices } from './devices'
import { type Beside, beside, count, drawn, left, offer, say } from './state'

const w = words.beside

// BesidePage lets phones and tablets in beside the loom, and says what that means.
export function BesidePage() {
  useEffect(count, [])
  const now = beside.value
  return (
    <>
      <h1>{w.title}</h1>
      <p class="lead">{w.lead}</p>
      {now ? <Shown now={now} /> : <p class="soft">{words.reading}</p>}
    </>
  )
}

function Shown({ now }: { now: Beside }) {
  return (
    <div class="columns beside">
      <div>
        <Standing now={now} />
        {now.on && <Pairing now={now} />}
      </div>
      <div>
        <Devices of={now.devices} />
        <Means />
      </div>
    </div>
  )
}

function Standing({ now }: { now: Beside }) {
  return (
    <section class="group" aria-label={w.title}>
      <p class={now.on ? 'beside-on' : ''}>{now.on ? w.on : w.off}</p>
      {now.network === 'none' && <p class="care">{w.none}</p>}
      {now.network === 'public' && <p class="care">{w.public_}</p>}
      {now.moved && <p class="care">{w.moved}</p>}
      <p class="buttons">
        <button type="button" class={now.on ? 'plain' : 'strong'} onClick={() => void say({ on: !now.on })}>
          {now.on ? w.turnOff : w.turnOn}
        </button>
      </p>
      <TickBox id="beside-always" label={w.always} value={now.always} set={(always) => void say({ always })} />
      <p class="soft">{w.alwaysSays}</p>
    </section>
  )
}

function Pairing({ now }: { now: Beside }) {
  const at = useSignal(0)
  const address = now.addresses[at.value] ?? now.addresses[0]
  if (!address) return null
  if (!now.code) {
    return (
      <section class="group" aria-label={w.codeHead}>
        <button type="button" class="strong" onClick={() => void offer()}>
          {w.pair}
        </button>
        <p class="beside-opens">
          {w.opens} <span class="beside-address">{address}</span>
        </p>
      </section>
    )
  }
  const { digits } = now.code
  return (
    <section class="group">
      <h2>{w.codeHead}</h2>
      <p>{w.scan}</p>
      <img class="beside-square" src={`/api/beside/code.svg?address=${encodeURIComponent(address)}&n=${drawn.value}`} alt={w.square} width="264" height="264" />
      <p>{w.orType}</p>
      <p class="beside-address">{address}</p>
      <p class="beside-code" aria-label={`${w.codeIs}: ${digits}`}>
        {digits.slice(0, 3)} {digits.slice(3)}
      </p>
      <p class="soft">{w.goodFor(left.value)}</p>
      {now.addresses.length > 1 && <Others of={now.addresses} at={at.value} choose={(n) => (at.value = n)} />}
      <p class="buttons">
        <button type="button" class="plain" onClick={() => void offer()}>
          {w.newCode}
        </button>
      </p>
    </section>
  )
}

function Others({ of, at, choose }: { of: readonly string[]; at: number; choose: (n: number) => void }) {
  return (
    <p class="beside-others">
      {w.orElse}{' '}
      {of.map((address, n) =>
        n === at ? null : (
          <button key={address} type="button" class="link" onClick={() => choose(n)}>
            {address}
          </button>
        ),
      )}
    </p>
  )
}

function Means() {
  return (
    <section class="group">
      <h2>{w.meansHead}</h2>
      <ul class="beside-means">
        {w.means.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </section>
  )
}
