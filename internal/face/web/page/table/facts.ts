import { computed } from '@preact/signals'
import { doc, lost } from '../doc'
import { words } from '../words'
import { table } from './session'

// What of the draft stands in words beside it. Each is a signal of its own, so that a stroke
// draws only those parts of the page anew that say something else after it.

const none: readonly string[] = []

export const hasTable = computed(() => table.value !== null)
export const version = computed(() => table.value?.version ?? 0)
export const named = computed(() => table.value?.name ?? '')
export const palette = computed(() => table.value?.palette ?? none)
export const dyeNames = computed(() => table.value?.names ?? none)
export const treadled = computed(() => (table.value?.treadling.lo.length ?? 0) > 0)
export const summary = computed(() => (table.value ? words.table.summary(table.value) : ''))

export const docId = computed(() => doc.value?.id)
export const gone = computed(() => lost.value || !!doc.value?.removed)
