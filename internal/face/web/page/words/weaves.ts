// The weaves that a plan may name, as docs/planfile.md lists them. They are written into
// the plan as they stand here in every language; what is shown may differ.
export const weaves: readonly (readonly [string, string])[] = [
  'plain', 'basket', 'rib', '2/1 twill', '2/2 twill', '3/1 twill', 'point twill', 'satin', 'huck', 'lace', 'waffle', 'overshot',
  'summer and winter', 'crackle', "monk's belt", 'double cloth', 'weft-faced', 'warp-faced',
].map((name) => [name, name] as const)
