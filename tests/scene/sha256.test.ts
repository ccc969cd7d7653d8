import { createHash } from 'node:crypto'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { sha256Hex } from '../../src/scene/sha256.ts'

// NIST, 'Cryptographic Standards and Guidelines: Example values, SHA-256' (examples of FIPS 180-4); the empty text: SHA test vectors, ShortMsg, length 0.
it.each([
  ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  ['abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq', '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1'],
])('the published value of %j', (text, hash) => expect(sha256Hex(text)).toBe(hash))

it('agrees with the library of node on any text, broken surrogates included', () => {
  fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => {
    expect(sha256Hex(text)).toBe(createHash('sha256').update(text, 'utf8').digest('hex'))
  }), { seed: 7 })
})
