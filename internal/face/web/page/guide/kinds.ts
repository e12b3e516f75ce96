// Part is one page of the guide.
export type Part = { id: string; title: string; says: string; blocks: readonly Block[] }

// Block is one thing on it: a paragraph, or what its key says.
export type Block =
  | string
  | { head: string }
  | { list: readonly string[] }
  | { steps: readonly string[] }
  | { pairs: readonly (readonly [string, string])[] } // what is written, what it means
  | { keys: readonly (readonly [string, string])[] } // what is pressed, what it does
  | { figures: readonly (readonly [string, string, string])[]; of: string } // id in the reckoning, words, value
  | { drawing: string; says: string }
  | { picture: 'cloth' | 'draft' | 'board' | 'ribbon'; of: string; says: string }
  | { care: string }

// Term is a word of the trade, and what it means here.
export type Term = { term: string; means: string; also?: string }
