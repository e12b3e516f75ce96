import { signal } from '@preact/signals'

// Saying things aloud, with voices of the device alone: a voice that works over the network
// would send what is woven away.

const remembered = 'sley-voice'

function kept(): boolean {
  try {
    return localStorage.getItem(remembered) === 'on'
  } catch {
    return false
  }
}

export const speaking = signal(kept())

const voices = (): SpeechSynthesisVoice[] => ('speechSynthesis' in window ? speechSynthesis.getVoices().filter((voice) => voice.localService) : [])

// hasVoice says whether the device has a voice of its own; its list may come late.
export const hasVoice = signal(voices().length > 0)
if ('speechSynthesis' in window) speechSynthesis.addEventListener('voiceschanged', () => (hasVoice.value = voices().length > 0))

// speakOut turns the voice on or off; off it is silent at once.
export function speakOut(on: boolean): void {
  speaking.value = on
  try {
    localStorage.setItem(remembered, on ? 'on' : 'off')
  } catch {
    // forgotten with the page
  }
  if (!on) hush()
}

export function hush(): void {
  if ('speechSynthesis' in window) speechSynthesis.cancel()
}

// say says something, instead of what was being said.
export function say(text: string | undefined): void {
  if (!speaking.value || !text) return
  const own = voices()
  const voice = own.find((one) => one.lang.startsWith(document.documentElement.lang || 'en')) ?? own[0]
  if (!voice) return
  hush()
  const utterance = new SpeechSynthesisUtterance(text)
  utterance.voice = voice
  utterance.lang = voice.lang
  speechSynthesis.speak(utterance)
}
