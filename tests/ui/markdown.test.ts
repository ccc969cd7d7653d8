import { expect, it } from 'vitest'
import { markdownBlocks, markdownSpans, pageOfLink } from '../../src/ui/common/markdown.tsx'

it('reads headings, paragraphs, lists, tables, code, quotes and rules', () => {
  const source = ['# Free nose', '', 'One line', 'and the next.', '', '- first', '  goes on', '- second', '', '1. one', '2. two', '', '| a | b |', '| --- | ---: |', '| 1 | x \\| y |', '', '> said', '', '---', '', '```', 'w S^4', '```'].join('\n')
  expect(markdownBlocks(source)).toEqual([
    { as: 'heading', level: 1, text: 'Free nose' },
    { as: 'paragraph', text: 'One line and the next.' },
    { as: 'list', ordered: false, items: ['first goes on', 'second'] },
    { as: 'list', ordered: true, items: ['one', 'two'] },
    { as: 'table', head: ['a', 'b'], rows: [['1', 'x | y']] },
    { as: 'quote', text: 'said' },
    { as: 'rule' },
    { as: 'code', text: 'w S^4' },
  ])
})

it('reads bold, italics, code and links inside a line', () => {
  expect(markdownSpans('a **b** _c_ *d* `e_f_g` [page](nose-landing.md)')).toEqual([
    { as: 'text', text: 'a ' }, { as: 'strong', text: 'b' }, { as: 'text', text: ' ' }, { as: 'em', text: 'c' }, { as: 'text', text: ' ' }, { as: 'em', text: 'd' }, { as: 'text', text: ' ' }, { as: 'code', text: 'e_f_g' }, { as: 'text', text: ' ' }, { as: 'link', text: 'page', href: 'nose-landing.md' },
  ])
})

it('leaves names with underscores alone', () => {
  expect(markdownSpans('ratedLoad_N and span_m_x')).toEqual([{ as: 'text', text: 'ratedLoad_N and span_m_x' }])
})

it('follows links to pages of our own only', () => {
  expect(pageOfLink('nose-landing.md')).toBe('nose-landing')
  expect(pageOfLink('./nose-landing.md#limits')).toBe('nose-landing')
  expect(pageOfLink('https://example.org/a.md')).toBeNull()
  expect(pageOfLink('javascript:alert(1)')).toBeNull()
  expect(pageOfLink('../secret.md')).toBeNull()
})

it('keeps markup of the page as words', () => {
  expect(markdownBlocks('<b onclick="x()">hi</b>')).toEqual([{ as: 'paragraph', text: '<b onclick="x()">hi</b>' }])
})

it.each(['```', '#', '- ', '|', '> ', '1.', '\n\n\n', '*', '[a](', '####### x'])('comes to an end on %j', (source) => {
  expect(Array.isArray(markdownBlocks(source))).toBe(true)
})
