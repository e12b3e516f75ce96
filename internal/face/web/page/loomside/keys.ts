import { back, go } from './stroke'
import { hush, speaking, speakOut } from './voice'

// Keys of a foot switch, which is a keyboard: most send the space bar, Enter, a page key or
// an arrow.
const onward = new Set([' ', 'Enter', 'PageDown', 'ArrowRight', 'ArrowDown'])
const backward = new Set(['PageUp', 'ArrowLeft', 'ArrowUp', 'Backspace'])

// taken says whether what has the keyboard uses the key itself.
function taken(event: KeyboardEvent): boolean {
  const to = event.target
  if (to instanceof HTMLInputElement || to instanceof HTMLTextAreaElement || to instanceof HTMLSelectElement) return true
  const pressed = to instanceof HTMLButtonElement || to instanceof HTMLAnchorElement || (to instanceof HTMLElement && to.tagName === 'SUMMARY')
  return pressed && (event.key === ' ' || event.key === 'Enter')
}

// keyed hears keys until what it gives is called.
export function keyed(): () => void {
  const hear = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.repeat) return
    if (event.key === 'Escape' && speaking.value) {
      hush()
      speakOut(false)
      return
    }
    if (taken(event)) return
    const did = onward.has(event.key) ? go() : backward.has(event.key) ? back() : false
    if (did) event.preventDefault()
  }
  document.addEventListener('keydown', hear)
  return () => document.removeEventListener('keydown', hear)
}
