import type { ReactNode } from 'react'

/**
 * The few forms of markdown our help pages use: headings, paragraphs, lists, tables, code, bold, italics, rules, links between pages.
 * Blocks come out as data first (tested), then as elements; text never becomes markup, so a page can carry no script.
 */
export type Block =
  | { as: 'heading'; level: 1 | 2 | 3; text: string }
  | { as: 'paragraph'; text: string }
  | { as: 'list'; ordered: boolean; items: readonly string[] }
  | { as: 'table'; head: readonly string[]; rows: readonly (readonly string[])[] }
  | { as: 'code'; text: string }
  | { as: 'quote'; text: string }
  | { as: 'rule' }

export type Span = { as: 'text' | 'strong' | 'em' | 'code'; text: string } | { as: 'link'; text: string; href: string }

const cells = (line: string): string[] => line.trim().replace(/^\||\|$/g, '').split(/(?<!\\)\|/).map((cell) => cell.trim().replaceAll('\\|', '|'))
const isTableRule = (line: string | undefined): boolean => line !== undefined && line.includes('-') && /^\s*\|?[\s:|-]+\|?\s*$/.test(line)
const listMark = /^\s*(?:([-*+])|(\d+)[.)])\s+(.*)$/

export const markdownBlocks = (source: string): readonly Block[] => {
  const lines = source.replaceAll('\r\n', '\n').split('\n')
  const blocks: Block[] = []
  let at = 0
  while (at < lines.length) {
    const line = lines[at]!
    const heading = /^(#{1,6})\s+(.*)$/.exec(line)
    const item = listMark.exec(line)
    if (line.trim() === '') at += 1
    else if (line.startsWith('```')) {
      const end = lines.findIndex((other, i) => i > at && other.startsWith('```'))
      const last = end === -1 ? lines.length : end
      blocks.push({ as: 'code', text: lines.slice(at + 1, last).join('\n') })
      at = last + 1
    } else if (heading !== null) {
      blocks.push({ as: 'heading', level: Math.min(3, heading[1]!.length) as 1 | 2 | 3, text: heading[2]!.trim() })
      at += 1
    } else if (/^\s*(-{3,}|\*{3,})\s*$/.test(line)) {
      blocks.push({ as: 'rule' })
      at += 1
    } else if (line.includes('|') && isTableRule(lines[at + 1])) {
      const rows: string[][] = []
      let row = at + 2
      for (; row < lines.length && lines[row]!.includes('|'); row += 1) rows.push(cells(lines[row]!))
      blocks.push({ as: 'table', head: cells(line), rows })
      at = row
    } else if (item !== null) {
      const ordered = item[2] !== undefined
      const items: string[] = []
      for (; at < lines.length; at += 1) {
        const next = listMark.exec(lines[at]!)
        if (next !== null && (next[2] !== undefined) === ordered) items.push(next[3]!)
        else if (items.length > 0 && /^\s{2,}\S/.test(lines[at]!)) items[items.length - 1] += ` ${lines[at]!.trim()}`
        else break
      }
      blocks.push({ as: 'list', ordered, items })
    } else if (line.startsWith('>')) {
      const quoted: string[] = []
      for (; at < lines.length && lines[at]!.startsWith('>'); at += 1) quoted.push(lines[at]!.replace(/^>\s?/, ''))
      blocks.push({ as: 'quote', text: quoted.join(' ') })
    } else {
      const text: string[] = []
      for (; at < lines.length; at += 1) {
        const next = lines[at]!
        if (next.trim() === '' || /^#{1,6}\s/.test(next) || next.startsWith('```') || next.startsWith('>') || listMark.test(next)) break
        text.push(next.trim())
      }
      blocks.push({ as: 'paragraph', text: text.join(' ') })
    }
  }
  return blocks
}

const spanPattern = /`([^`]+)`|\*\*([^*]+)\*\*|(?<![A-Za-z0-9])_([^_]+)_(?![A-Za-z0-9])|\*([^*]+)\*|\[([^\]]+)\]\(([^)\s]+)\)/g

export const markdownSpans = (text: string): readonly Span[] => {
  const spans: Span[] = []
  let from = 0
  for (const match of text.matchAll(spanPattern)) {
    if (match.index > from) spans.push({ as: 'text', text: text.slice(from, match.index) })
    const [whole, code, strong, em, star, label, href] = match
    if (code !== undefined) spans.push({ as: 'code', text: code })
    else if (strong !== undefined) spans.push({ as: 'strong', text: strong })
    else if (em !== undefined || star !== undefined) spans.push({ as: 'em', text: (em ?? star)! })
    else if (label !== undefined && href !== undefined) spans.push({ as: 'link', text: label, href })
    from = match.index + whole.length
  }
  if (from < text.length) spans.push({ as: 'text', text: text.slice(from) })
  return spans
}

/** Only pages of our own, named by their file, can be followed; any other address is shown as words. */
export const pageOfLink = (href: string): string | null => /^(?:\.\/)?([a-z0-9-]+)\.md(?:#.*)?$/.exec(href)?.[1] ?? null

const Inline = ({ text, onPage }: { text: string; onPage: (page: string) => void }): ReactNode =>
  markdownSpans(text).map((span, at) => {
    switch (span.as) {
      case 'text': return span.text
      case 'strong': return <strong key={at}>{span.text}</strong>
      case 'em': return <em key={at}>{span.text}</em>
      case 'code': return <code key={at}>{span.text}</code>
      case 'link': {
        const page = pageOfLink(span.href)
        return page === null ? <span key={at}>{span.text}</span> : <button type="button" className="link" key={at} onClick={() => onPage(page)}>{span.text}</button>
      }
    }
  })

export const Markdown = ({ source, onPage }: { source: string; onPage: (page: string) => void }): ReactNode =>
  markdownBlocks(source).map((block, at) => {
    switch (block.as) {
      // The panel has the page's own heading; a second one of the same rank would not nest.
      case 'heading': return block.level === 1 ? <h3 key={at}><Inline text={block.text} onPage={onPage} /></h3> : <h4 key={at}><Inline text={block.text} onPage={onPage} /></h4>
      case 'paragraph': return <p key={at}><Inline text={block.text} onPage={onPage} /></p>
      case 'list': {
        const items = block.items.map((item, i) => <li key={i}><Inline text={item} onPage={onPage} /></li>)
        return block.ordered ? <ol key={at}>{items}</ol> : <ul key={at}>{items}</ul>
      }
      case 'table': return (
        <div className="table-scroll" key={at} tabIndex={0} role="group">
          <table>
            <thead><tr>{block.head.map((cell, i) => <th key={i} scope="col"><Inline text={cell} onPage={onPage} /></th>)}</tr></thead>
            <tbody>{block.rows.map((row, r) => <tr key={r}>{row.map((cell, i) => <td key={i}><Inline text={cell} onPage={onPage} /></td>)}</tr>)}</tbody>
          </table>
        </div>
      )
      case 'code': return <pre key={at} tabIndex={0}>{block.text}</pre>
      case 'quote': return <blockquote key={at}><Inline text={block.text} onPage={onPage} /></blockquote>
      case 'rule': return <hr key={at} />
    }
  })
