import { Draft } from './draw_draft'
import { Along, Ladder, Share } from './draw_length'
import { Cross, Sley, TakeUp, Wraps } from './draw_thread'

// drawings are those of the guide by their names.
export const drawings = { along: Along, draft: Draft, ladder: Ladder, takeup: TakeUp, share: Share, cross: Cross, sley: Sley, wraps: Wraps }
export type DrawingName = keyof typeof drawings

export const isDrawing = (name: string): name is DrawingName => name in drawings
