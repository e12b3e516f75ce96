import type { Term } from '../guide/kinds'
import { clothTerms } from './en_terms_cloth'
import { loomTerms } from './en_terms_loom'
import { yarnTerms } from './en_terms_yarn'

// terms are the words of the trade, each with one meaning here. Their keys are where they
// stand in the glossary.
export const terms = { ...loomTerms, ...clothTerms, ...yarnTerms } satisfies Record<string, Term>
