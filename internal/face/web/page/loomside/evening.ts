import { signal } from '@preact/signals'

// Evening colours: dark and warm, by choice, whatever the device prefers.

const remembered = 'sley-evening'

function kept(): boolean {
  try {
    return localStorage.getItem(remembered) === 'on'
  } catch {
    return false
  }
}

export const evening = signal(kept())

evening.subscribe((on) => document.documentElement.classList.toggle('evening', on))

export function turnEvening(): void {
  evening.value = !evening.value
  try {
    localStorage.setItem(remembered, evening.value ? 'on' : 'off')
  } catch {
    // forgotten with the page
  }
}
