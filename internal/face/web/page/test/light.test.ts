import assert from 'node:assert/strict'
import { test } from 'node:test'
import { against, colourOf, colourOfLight, cssOf, lightness, lightOf, luminance, seenAs, seenLight, type Colour, type Light } from '../table/light'
import { below, seeded } from './seeded'

const near = (got: number, want: number, off: number, says: string): void => assert.ok(Math.abs(got - want) <= off, `${says}: ${got}, not ${want}`)

test('colours are read and written', () => {
  assert.deepEqual(colourOf('#25407c'), [0x25, 0x40, 0x7c])
  assert.equal(cssOf([0, 4, 255]), '#0004ff')
  for (const wrong of ['', '#fff', 'red', '#gggggg', '#1234567']) assert.deepEqual(colourOf(wrong), [255, 255, 255])
  for (let v = 0; v < 256; v++) assert.deepEqual(colourOfLight(lightOf([v, 255 - v, 7])), [v, 255 - v, 7])
})

test('greys are as light as the colours', () => {
  // The grey of pure green is 220 by the formulas of IEC 61966-2-1: luminance 0.7152,
  // 255 (1.055 × 0.7152^(1/2.4) - 0.055) = 219.9, which is what paper has.
  assert.deepEqual(seenAs([0, 255, 0], 'grey'), [220, 220, 220])
  // CIE L* of the primaries of sRGB, by the formula of CIE 15 from their luminances; the
  // figures that are printed everywhere: red 53.24, green 87.73, blue 32.30 (from memory).
  near(lightness([255, 0, 0]), 53.24, 0.01, 'red')
  near(lightness([0, 255, 0]), 87.73, 0.01, 'green')
  near(lightness([0, 0, 255]), 32.3, 0.01, 'blue')
  near(lightness([255, 255, 255]), 100, 1e-6, 'white')
  near(lightness([1, 1, 1]), 903.3 * (1 / 255 / 12.92), 0.001, 'nearly black')
  const random = seeded(1)
  for (let i = 0; i < 200; i++) {
    const colour: Colour = [below(random, 256), below(random, 256), below(random, 256)]
    near(lightness(seenAs(colour, 'grey')), lightness(colour), 0.35, cssOf(colour))
  }
})

// What the long, middle and short cones of Smith and Pokorny tell of linear sRGB: the matrix
// of Viénot, Brettel and Mollon (1999), as it is printed there.
const cones = ([r, g, b]: Light): Light => [17.8824 * r + 43.5161 * g + 4.11935 * b, 3.45565 * r + 27.1554 * g + 3.86714 * b, 0.0299566 * r + 0.184309 * g + 1.46709 * b]

const someLight = (random: () => number): Light => [random(), random(), random()]

test('who lacks cones sees what the others tell, unchanged', () => {
  const random = seeded(2)
  for (let i = 0; i < 300; i++) {
    const light = someLight(random)
    const [l, m, s] = cones(light)
    for (const [seeing, kept] of [['protan', [1, 2]], ['deutan', [0, 2]], ['tritan', [0, 1]]] as const) {
      const got = cones(seenLight(light, seeing))
      for (const k of kept) near(got[k], cones(light)[k], 0.002, `${seeing}, cone ${k}`)
      const again = seenLight(seenLight(light, seeing), seeing)
      for (const k of [0, 1, 2] as const) near(again[k], seenLight(light, seeing)[k], 0.001, `${seeing} twice`)
    }
    // The third cone as the paper has it: of the other two alone.
    near(cones(seenLight(light, 'protan'))[0], 2.02344 * m - 2.52581 * s, 0.002, 'protan')
    near(cones(seenLight(light, 'deutan'))[1], 0.494207 * l + 1.24827 * s, 0.002, 'deutan')
  }
})

test('greys look the same to all', () => {
  for (const v of [0, 60, 128, 200, 255]) {
    for (const seeing of ['grey', 'protan', 'deutan', 'tritan'] as const) assert.deepEqual(seenAs([v, v, v], seeing), [v, v, v])
  }
})

test('the two lights that look the same without cones for short waves do', () => {
  // 485 and 660 nm in the CIE 1931 standard observer (CIE 15), by the cones of Smith and
  // Pokorny (1975), L = 0.15514 X + 0.54312 Y - 0.03286 Z and so on; the figures of the
  // observer are from memory. The paper has the observer of Judd and Vos, hence a share of 4%.
  const inCones = ([x, y, z]: Light): Light => [100 * (0.15514 * x + 0.54312 * y - 0.03286 * z), 100 * (-0.15514 * x + 0.45684 * y + 0.03286 * z), 100 * 0.01608 * z]
  for (const observed of [[0.05795, 0.1693, 0.6162], [0.1649, 0.061, 0]] as const) {
    const anchor = inCones(observed)
    const got = cones(seenLight(screenOf(anchor), 'tritan'))
    for (const k of [0, 1, 2] as const) near(got[k], anchor[k], 0.04 * Math.max(anchor[k], 0.1), `cone ${k}`)
  }
})

// screenOf turns cones into linear sRGB, by Cramer's rule.
function screenOf(lms: Light): Light {
  const [r, g, b] = [cones([1, 0, 0]), cones([0, 1, 0]), cones([0, 0, 1])]
  const det = (x: Light, y: Light, z: Light): number => x[0] * (y[1] * z[2] - y[2] * z[1]) - y[0] * (x[1] * z[2] - x[2] * z[1]) + z[0] * (x[1] * y[2] - x[2] * y[1])
  const whole = det(r, g, b)
  return [det(lms, g, b) / whole, det(r, lms, b) / whole, det(r, g, lms) / whole]
}

test('the halves for short waves meet where they part', () => {
  const random = seeded(4)
  for (let i = 0; i < 100; i++) {
    const [r, g] = [random(), random()]
    const b = (0.03901 * r - 0.02788 * g) / 0.01113
    const [one, other] = [seenLight([r, g, b - 1e-9], 'tritan'), seenLight([r, g, b + 1e-9], 'tritan')]
    for (const k of [0, 1, 2] as const) near(one[k], other[k], 0.001, 'at the border')
  }
})

test('black or white stands out', () => {
  assert.deepEqual(against([0x25, 0x40, 0x7c]), [255, 255, 255])
  assert.deepEqual(against([0xf5, 0xf0, 0xe6]), [0, 0, 0])
  near(luminance(lightOf([255, 255, 255])), 1, 1e-9, 'white')
})
