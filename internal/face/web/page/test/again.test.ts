import assert from 'node:assert/strict'
import { test } from 'node:test'
import { again } from '../table/again'
import { endsOf, onTop, picksOf } from '../table/cloth'
import { someTable } from './drafted'
import { below, seeded } from './seeded'

test('a draft again and again weaves what it weaves, beside itself', () => {
  const random = seeded(31)
  for (let round = 0; round < 30; round++) {
    const one = someTable(random, 1 + below(random, 70), 1 + below(random, 70))
    const many = again(one, 60)
    const [ends, picks] = [endsOf(one), picksOf(one)]
    assert.ok(endsOf(many) >= 60 && endsOf(many) % ends === 0 && endsOf(many) < 60 + ends)
    assert.ok(picksOf(many) >= 60 && picksOf(many) % picks === 0)
    for (let i = 0; i < 300; i++) {
      const [pick, end] = [below(random, picksOf(many)), below(random, endsOf(many))]
      assert.equal(onTop(many, pick, end), onTop(one, pick % picks, end % ends))
      assert.equal(many.warp.colours[end], one.warp.colours[end % ends])
      assert.equal(many.weft.colours[pick], one.weft.colours[pick % picks])
    }
  }
})
