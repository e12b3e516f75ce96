import { signal } from '@preact/signals'

// The pages and their addresses. An address is all that is needed to come back to where
// one was.

export const stages = ['piece', 'cloth', 'numbers', 'dress', 'weave', 'finish'] as const
export type Stage = (typeof stages)[number]

const shelves = ['yarns', 'looms', 'drafts'] as const
export type Shelf = (typeof shelves)[number]

export type Place =
  | { page: 'bench' }
  | { page: 'new' }
  | { page: 'warp'; id: number; stage: Stage }
  | { page: 'loomside'; id: number }
  | { page: Shelf }
  | { page: 'yarn' | 'loom' | 'draft'; id: number }
  | { page: 'table'; of: 'warp' | 'draft'; id: number }
  | { page: 'catalogue' }
  | { page: 'records' }
  | { page: 'units' }
  | { page: 'beside' }
  | { page: 'guide'; part: string }
  | { page: 'glossary'; term?: string }
  | { page: 'nowhere' }

const whole = (text: string | undefined): number => (text && /^[1-9]\d{0,15}$/.test(text) ? Number(text) : 0)

// placeOf reads an address.
export function placeOf(address: string): Place {
  const [path = '', term] = address.split('#')
  if (path === '/glossary' && term) return { page: 'glossary', term }
  const [first = '', second, third, ...more] = path.replace(/^\/|\/$/g, '').split('/')
  const id = whole(second)
  if (more.length > 0) return { page: 'nowhere' }
  if ((first === 'warps' || first === 'drafts') && id && third === 'table') return { page: 'table', of: first === 'warps' ? 'warp' : 'draft', id }
  if (first === 'warps' && id) {
    const stage = stages.find((s) => s === (third ?? 'piece'))
    return stage ? { page: 'warp', id, stage } : { page: 'nowhere' }
  }
  if (third !== undefined) return { page: 'nowhere' }
  if (first === 'loomside' && id) return { page: 'loomside', id }
  if (first === 'guide') return { page: 'guide', part: second ?? '' }
  if (first === 'drafts' && second === 'catalogue') return { page: 'catalogue' }
  const shelf = shelves.find((s) => s === first)
  if (shelf && id) return { page: shelf.slice(0, -1) as 'yarn' | 'loom' | 'draft', id }
  if (second !== undefined) return { page: 'nowhere' }
  return shelf ? { page: shelf } : alone(first)
}

function alone(first: string): Place {
  switch (first) {
    case '':
      return { page: 'bench' }
    case 'new':
    case 'records':
    case 'units':
    case 'beside':
    case 'glossary':
      return { page: first }
    default:
      return { page: 'nowhere' }
  }
}

// addressOf is the address of a place.
export function addressOf(place: Place): string {
  switch (place.page) {
    case 'bench':
    case 'nowhere':
      return '/'
    case 'warp':
      return `/warps/${place.id}/${place.stage}`
    case 'yarn':
    case 'loom':
    case 'draft':
      return `/${place.page}s/${place.id}`
    case 'loomside':
      return `/loomside/${place.id}`
    case 'table':
      return `/${place.of}s/${place.id}/table`
    case 'catalogue':
      return '/drafts/catalogue'
    case 'guide':
      return place.part ? `/guide/${place.part}` : '/guide'
    case 'glossary':
      return place.term ? `/glossary#${place.term}` : '/glossary'
    default:
      return `/${place.page}`
  }
}

// here is the place that is shown.
export const here = signal<Place>({ page: 'bench' })

// moved counts the moves, so that the page can put the keyboard where the new one begins.
export const moved = signal(0)

// go shows another place; the browser's back leads back.
export function go(place: Place, instead = false): void {
  const to = addressOf(place)
  if (instead) history.replaceState(null, '', to)
  else if (to !== location.pathname + location.hash) history.pushState(null, '', to)
  here.value = place
  moved.value++
}

// follow keeps the place in step with the address.
export function follow(): void {
  here.value = placeOf(location.pathname + location.hash)
  window.addEventListener('popstate', () => {
    here.value = placeOf(location.pathname + location.hash)
    moved.value++
  })
}
