import { signal } from '@preact/signals'

// Where a device is: it has three places, and asks for no other.
export type At = { page: 'hand' } | { page: 'pair'; code: string } | { page: 'loom'; id: number }

// atOf reads an address. The code to pair by stands behind #, which is sent to nobody.
export function atOf(path: string, hash: string): At {
  const loom = /^\/loomside\/([1-9]\d{0,14})$/.exec(path)
  if (loom) return { page: 'loom', id: Number(loom[1]) }
  if (path === '/pair') return { page: 'pair', code: /^#\d{6}$/.test(hash) ? hash.slice(1) : '' }
  return { page: 'hand' }
}

export const at = signal<At>({ page: 'hand' })

// addressOf is the address of a place; that of pairing without its code.
export const addressOf = (to: At): string => (to.page === 'loom' ? `/loomside/${to.id}` : to.page === 'pair' ? '/pair' : '/')

export function goTo(to: At, instead = false): void {
  if (instead) history.replaceState(null, '', addressOf(to))
  else history.pushState(null, '', addressOf(to))
  at.value = to
  scrollTo(0, 0)
}

// followAt keeps the place in step with the address.
export function followAt(): void {
  const read = () => (at.value = atOf(location.pathname, location.hash))
  read()
  window.addEventListener('popstate', read)
}
