import { english } from './en'

// One catalogue for each language; a language without all the words does not compile.
export type Words = typeof english

export const words: Words = english
