import { useSignal } from '@preact/signals'
import { Text } from '../inputs'
import { words } from '../words'
import { type Device, rename, revoke } from './state'

const w = words.beside

// Devices are the phones and tablets that were paired, those that are let in first.
export function Devices({ of }: { of: readonly Device[] }) {
  const all = [...of.filter((d) => !d.revoked), ...of.filter((d) => d.revoked)]
  return (
    <section class="group">
      <h2>{w.devices}</h2>
      {all.length === 0 && <p class="soft">{w.noDevices}</p>}
      <ul class="beside-devices" role="list">
        {all.map((device) => (
          <One key={device.id} device={device} />
        ))}
      </ul>
    </section>
  )
}

function One({ device }: { device: Device }) {
  const open = useSignal(false)
  const { id, name, revoked } = device
  return (
    <li class={revoked ? 'revoked' : ''}>
      <p>
        <span class="beside-name">{name}</span>{' '}
        <span class="soft">{revoked ? w.revoked : w.seen(device.seen)}</span>
      </p>
      {!revoked && (
        <p class="buttons">
          <button type="button" class="link" aria-label={w.renameOf(name)} aria-expanded={open.value} onClick={() => (open.value = !open.value)}>
            {w.rename}
          </button>
          <button type="button" class="link" aria-label={w.revokeOf(name)} onClick={() => void revoke(id)}>
            {w.revoke}
          </button>
        </p>
      )}
      {open.value && !revoked && <Called device={device} close={() => (open.value = false)} />}
    </li>
  )
}

function Called({ device, close }: { device: Device; close: () => void }) {
  const typed = useSignal(device.name)
  const send = async () => {
    if (await rename(device.id, typed.value)) close()
  }
  return (
    <form
      class="fields"
      onSubmit={(event) => {
        event.preventDefault()
        void send()
      }}
    >
      <Text id={`device-${device.id}`} label={w.deviceName} value={typed.value} set={(to) => (typed.value = to)} />
      <p class="field act">
        <button type="submit" class="plain">
          {w.save}
        </button>
      </p>
    </form>
  )
}
