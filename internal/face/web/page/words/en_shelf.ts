// The words of yarns and looms.
export const shelf = {
  skein: 'Measured skein',
  unsaid: 'not said',
  shafts: 'Shafts',
  treadles: 'Treadles',
  shed: 'Shed',
  weavingWidth: 'Weaving width',
  heddles: 'Heddles on each shaft',
  heddlesHint: 'one number for every shaft, or one for each: 100, 200, 200, 100',
  waste: 'Loom waste',
  wasteHint: 'in all: 30 in',
  beamHolds: 'Longest warp the beam takes',
  beams: 'Beams',
  reeds: 'Reeds',
  reed: (n: number) => `Reed ${n}`,
  addReed: 'Another reed',
  loomMore: 'The loom of this warp',
}
