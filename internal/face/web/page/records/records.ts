import type { Card } from '../kinds'
import type { Learnt } from '../kinds_doc'
import { lotsOf } from '../lots'

// Recorded is a warp that is finished, with what it taught.
export type Recorded = Card & { cloth?: string; sett?: string; yarns: string[]; learnt: (Learnt & { note?: string })[] }

export const records = lotsOf<Recorded>('records')
