import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { share } from '../../../app/store/share.ts'

describe('sharing what has not changed', () => {
  it('keeps unchanged parts the same object and takes changed ones', () => {
    const old = { a: { x: 1 }, list: [{ y: 1 }, { y: 2 }], gone: 1, none: null }
    const next = { a: { x: 1 }, list: [{ y: 1 }, { y: 3 }], none: null }
    const shared = share(old, next)
    expect(shared).toEqual(next)
    expect(shared.a).toBe(old.a)
    expect(shared.list[0]).toBe(old.list[0])
    expect(shared.list[1]).not.toBe(old.list[1])
    expect(share(old, structuredClone(old))).toBe(old)
    expect(share({ a: undefined }, {})).toEqual({})
  })

  it('takes a key for a key, whatever it is called', () => {
    const next: unknown = JSON.parse('[{"__proto__":[],"constructor":{}}]')
    expect(share([{}], next)).toEqual(next)
    expect(JSON.stringify(share([{}], next))).toBe('[{"__proto__":[],"constructor":{}}]')
  })

  it('never changes a value', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), (old, next) => {
        expect(share(old, next)).toEqual(next)
      }),
    )
  })
})
