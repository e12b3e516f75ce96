import { signal } from '@preact/signals'
import { ask } from '../ask'
import { heard } from '../heard'
import type { Answer } from '../kinds'

// How it stands with phones and tablets beside the loom, as the server says it.

export type Device = { id: string; name: string; made: string; seen: string; revoked: boolean }

export type Beside = {
  on: boolean
  always: boolean
  network: 'private' | 'public' | 'none'
  moved: boolean
  addresses: string[]
  code?: { digits: string; seconds: number }
  devices: Device[]
}

export const beside = signal<Beside | null>(null)

// left is for how many seconds the code is good still; drawn counts the codes, so that each
// is drawn anew.
export const left = signal(0)
export const drawn = signal(0)

let until = 0 // by the clock of this machine, in milliseconds

function take(answer: Answer<Beside>): boolean {
  if (!heard(answer)) return false
  const now = answer.value
  if (now.code?.digits !== beside.peek()?.code?.digits) drawn.value++
  until = Date.now() + (now.code?.seconds ?? 0) * 1000
  left.value = now.code?.seconds ?? 0
  beside.value = now
  return true
}

export const readBeside = async (): Promise<boolean> => take(await ask<Beside>('/api/beside'))

export const say = async (what: { on?: boolean; always?: boolean }): Promise<boolean> => take(await ask<Beside>('/api/beside', what))

export const offer = async (): Promise<boolean> => take(await ask<Beside>('/api/beside/code', {}))

export const revoke = async (id: string): Promise<boolean> => take(await ask<Beside>(`/api/devices/${encodeURIComponent(id)}/revoke`, {}))

export const rename = async (id: string, name: string): Promise<boolean> => take(await ask<Beside>(`/api/devices/${encodeURIComponent(id)}`, { name }))

// count counts the seconds of the code down while it is shown; at its end the page is read
// anew.
export function count(): () => void {
  const timer = window.setInterval(() => {
    if (until === 0) return
    left.value = Math.max(0, Math.round((until - Date.now()) / 1000))
    if (left.value > 0) return
    until = 0
    void readBeside()
  }, 1000)
  return () => clearInterval(timer)
}
