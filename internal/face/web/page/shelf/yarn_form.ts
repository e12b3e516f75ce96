import type { Setting } from '../kinds'

// How a yarn is told that is new: by the label it came with, by a skein that was
// measured, or by its wraps.
export type Way = 'label' | 'skein' | 'wraps'

export type YarnForm = {
  way: Way
  text: string
  name: string
  fibre: string
  colour: string
  length: string
  weight: string
  skeins: string
  relaxed: boolean
  scoured: boolean
  handspun: boolean
  wraps: string
  kind: string
}

export const emptyForm: YarnForm = {
  way: 'label', text: '', name: '', fibre: '', colour: '', length: '', weight: '', skeins: '',
  relaxed: false, scoured: false, handspun: false, wraps: '', kind: 'touching',
}

// setsOf are the values of a yarn that a form says beside its label. What is empty is
// left out.
export function setsOf(form: YarnForm): Setting[] {
  if (form.way === 'label') return []
  const measured = form.way === 'skein' ? skeinOf(form) : wrapsOf(form)
  return [['fibre', form.fibre], ['colour', form.colour], ...measured].filter(([, value]) => value !== '' && value !== false).map(([path, value]) => ({ path, value }) as Setting)
}

type Said = [string, string | number | boolean]

function skeinOf(form: YarnForm): Said[] {
  const many = /^\s*\d{1,4}\s*$/.test(form.skeins) ? Number(form.skeins) : form.skeins.trim()
  const said: Said[] = [
    ['skein.length', form.length.trim()],
    ['skein.weight', form.weight.trim()],
    ['skein.skeins', many],
  ]
  return [...said, ['skein.relaxed', form.relaxed], ['skein.scoured', form.scoured], ['handspun', form.handspun]]
}

const wrapsOf = (form: YarnForm): Said[] => [['wraps', form.wraps.trim() && `${form.wraps.trim()} ${form.kind}`]]

// nameOf is what the yarn is called: as was typed, or as its label reads.
export const nameOf = (form: YarnForm, read: string): string => form.name.trim() || (form.way === 'label' ? read : '')

// saysSomething tells whether there is anything to be read.
export const saysSomething = (form: YarnForm): boolean => (form.way === 'label' ? form.text.trim() !== '' : setsOf(form).some((set) => set.path !== 'colour'))
