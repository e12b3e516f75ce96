import { signal } from '@preact/signals'
import type { Way } from './strokes'

// What the hand holds: what a pointer does where it is put down.

export type Tool = 'draw' | 'choose' | 'move'

export const tool = signal<Tool>('draw')
export const way = signal<Way>('line')
export const colour = signal(0) // of the palette

// copied is what was copied of a part, to be put elsewhere.
export const copied = signal<{ part: string; values: (number | string)[] } | null>(null)

// held is a number that was begun by keys and may go on; 0: none. parted is that one was put
// and a space after it means nothing more.
export const held = signal(0)
export const parted = signal(true)
