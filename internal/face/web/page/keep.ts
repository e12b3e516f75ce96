// What a window keeps through a reload: sessionStorage belongs to one window. Where it
// is closed to us the page works on, and forgets on reload.

export function keep(name: string, value: unknown): void {
  try {
    sessionStorage.setItem(`sley-${name}`, JSON.stringify(value))
  } catch {
    // full or forbidden
  }
}

// kept is what was kept, or other where there is nothing readable.
export function kept<T>(name: string, other: T): T {
  try {
    const text = sessionStorage.getItem(`sley-${name}`)
    return text === null ? other : (JSON.parse(text) as T)
  } catch {
    return other
  }
}
