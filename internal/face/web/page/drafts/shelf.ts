import type { Card } from '../kinds'
import { lotsOf } from '../lots'

// drafts are those of the shelf.
export const drafts = lotsOf<Card>('drafts')
