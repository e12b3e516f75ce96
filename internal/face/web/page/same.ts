import { computed, type ReadonlySignal } from '@preact/signals'

// shared is the new value, with every part of it that is as it was taken from the old one:
// what shows such a part need not be drawn again.
export function shared<T>(old: unknown, now: T): T {
  if (old === now || typeof old !== 'object' || typeof now !== 'object' || old === null || now === null) return now
  if (Array.isArray(old) !== Array.isArray(now)) return now
  const was = old as Record<string, unknown>
  const is = now as Record<string, unknown>
  const keys = Object.keys(is)
  let differs = keys.length !== Object.keys(was).length
  for (const key of keys) {
    const part = shared(was[key], is[key])
    if (part !== was[key] || !(key in was)) differs = true
    is[key] = part
  }
  return differs ? now : (old as T)
}

// perPath reads what is of a path so that a part of the page that shows it is drawn again
// when that changes, and not with every key in any field. It is the same as long as it says
// the same.
export function perPath<T>(of: (path: string) => T): (path: string) => T {
  const known = new Map<string, ReadonlySignal<T>>()
  return (path) => {
    let now = known.get(path)
    if (!now) {
      let last: T
      now = computed(() => (last = shared(last, of(path))))
      known.set(path, now)
    }
    return now.value
  }
}
