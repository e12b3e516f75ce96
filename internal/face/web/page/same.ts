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
