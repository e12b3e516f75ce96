import { signal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { words } from '../words'
import mp4 from './awake.mp4'
import webm from './awake.webm'

// A screen goes dark while nobody touches it. What browsers have against that they keep for
// pages that came sealed, so a film of nothing plays without sound behind this one, for as
// long as the weaver wants it. awake.md says how the film was made.

const remembered = 'sley-awake'

function kept(): boolean {
  try {
    return localStorage.getItem(remembered) !== 'off'
  } catch {
    return true
  }
}

const wanted = signal(kept())
export const awake = signal(false) // the film plays

const at = (name: string): string => new URL(name, import.meta.url).href

// Film plays from the first touch on, and again when the page comes back into sight.
export function Film() {
  const film = useRef<HTMLVideoElement>(null)
  const want = wanted.value
  useEffect(() => {
    const play = () => {
      if (want && !document.hidden) void film.current?.play().catch(() => undefined) // the device will not have it
    }
    play()
    const events = ['pointerup', 'keyup', 'visibilitychange'] as const
    for (const name of events) document.addEventListener(name, play)
    if (!want) film.current?.pause()
    return () => events.forEach((name) => document.removeEventListener(name, play))
  }, [want])
  return (
    <video class="film" ref={film} muted loop playsInline preload="auto" tabIndex={-1} aria-hidden="true" onPlaying={() => (awake.value = true)} onPause={() => (awake.value = false)}>
      <source src={at(mp4)} type="video/mp4" />
      <source src={at(webm)} type="video/webm" />
    </video>
  )
}

// AwakeButton says whether the screen is kept awake, and turns it off and on.
export function AwakeButton() {
  const turn = () => {
    wanted.value = !wanted.value
    try {
      localStorage.setItem(remembered, wanted.value ? 'on' : 'off')
    } catch {
      // on again with the next page
    }
  }
  return (
    <button type="button" class="plain" aria-pressed={wanted.value} onClick={turn}>
      {awake.value ? words.beside.awake : words.beside.asleep}
    </button>
  )
}
