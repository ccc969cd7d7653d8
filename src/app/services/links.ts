import { createStore } from 'zustand/vanilla'
import { layoutOf, placedOf, jobOf } from '../../scene/document.ts'
import { replacedLetter } from '../../scene/revision.ts'
import type { App } from '../../state/app.ts'
import { comparisonOf } from '../../state/comparison.ts'
import type { IncomingState, LinkOutcome, Outcome } from '../../ui/services.ts'
import type { Keeper } from './keeper.ts'
import { releasePlan } from './release.ts'
import type { makeYards } from './yards.ts'

/** Address of the app without what stands behind '#' and without the pseudo-language of tests. */
const baseAddress = (): string => `${location.origin}${location.pathname}`

/** Links that carry a layout: made, looked at, opened as a copy. Their code is fetched when one is met or asked for. */
export const makeLinks = (app: App, keeper: Keeper, yards: ReturnType<typeof makeYards>) => {
  const incoming = createStore<IncomingState>()(() => ({ link: null }))

  const forget = (): void => {
    incoming.setState({ link: null })
    if (app.view.getState().panel === 'incoming') app.view.setState({ panel: null })
    if (location.hash !== '') history.replaceState(history.state, '', `${location.pathname}${location.search}`)
  }

  const makeLink = async (): Promise<LinkOutcome> => {
    releasePlan(app, keeper, 'shared')
    const { document } = app.documents.getState()
    const [{ linkContent, MOST_LINK_CHARS, writeFragment }, { qrModules, qrPath, EASY_QR_CHARS, MOST_QR_CHARS }] = await Promise.all([import('../../scene/link/layoutLink.ts'), import('../../sheet/qr.ts')])
    const content = linkContent(document)
    const fragment = writeFragment(content)
    const address = `${baseAddress()}#${fragment}`
    const { length: chars } = address
    if (fragment.length > MOST_LINK_CHARS) return { ok: false, reason: { en: `This layout makes a link of ${chars} characters; programs that pass links on cut those above ${MOST_LINK_CHARS}. Share the file instead.`, es: `Este plano da un enlace de ${chars} caracteres; los programas que pasan enlaces cortan los de más de ${MOST_LINK_CHARS}. Comparta el archivo.` } }
    const code = qrModules(address)
    return { ok: true, link: { address, chars, left: content.left, easyQrChars: EASY_QR_CHARS, mostQrChars: MOST_QR_CHARS, qr: code === null ? null : { ...qrPath(code), isEasy: code.isEasy } } }
  }

  const shareLink = async (address: string): Promise<Outcome> => {
    if (typeof navigator.share === 'function') {
      try {
        await navigator.share({ title: layoutOf(app.documents.getState().document).title, url: address })
        return { ok: true }
      } catch (error) {
        if (error instanceof DOMException && error.name === 'AbortError') return { ok: true }
      }
    }
    return copyLink(address)
  }

  const copyLink = async (address: string): Promise<Outcome> => {
    try {
      await navigator.clipboard.writeText(address)
      return { ok: true, said: { en: 'The link is copied.', es: 'El enlace está copiado.' } }
    } catch {
      return { ok: false, reason: { en: 'This browser does not let the app copy. Mark the link and copy it by hand.', es: 'Este navegador no deja copiar. Marque el enlace y cópielo a mano.' } }
    }
  }

  /** Reads a link in the address line, if one is there, and shows what it is. Nothing is opened or replaced. */
  const lookAtAddress = async (): Promise<void> => {
    const { hash } = location
    // As `isLayoutFragment` has it; the code that knows is fetched only for such a one.
    if (!/^#yard\d/.test(hash)) return
    const { readFragment } = await import('../../scene/link/layoutLink.ts')
    const read = readFragment(hash)
    if (!read.ok) incoming.setState({ link: { ok: false, reason: read.reason, chars: hash.length } })
    else {
      const { document, notes } = read
      const { title, revision, layoutId } = layoutOf(document)
      const isHere = (await keeper.layouts().catch(() => [])).some((entry) => entry.layoutId === layoutId)
      incoming.setState({ link: { ok: true, document, notes, title, revision, replaces: replacedLetter(document), job: jobOf(document), items: placedOf(document).length, chars: hash.length, isHere } })
    }
    app.documents.getState().cancelPreview()
    app.view.setState({ panel: 'incoming', tool: null })
  }

  const openIncoming = async (): Promise<Outcome> => {
    const { link } = incoming.getState()
    if (link === null || !link.ok) return { ok: false, reason: { en: 'There is no link to open.', es: 'No hay enlace que abrir.' } }
    // Always a copy: what is here under the same name stays as it is.
    await yards.openCopy(link.document)
    forget()
    return { ok: true }
  }

  const compareIncoming = (): void => {
    const { link } = incoming.getState()
    if (link === null || !link.ok) return
    comparisonOf(app).setState({ compared: { name: `${link.title} ${link.revision}`.trim(), document: link.document } })
    forget()
    app.view.setState({ panel: 'compare', leaf: 'plan' })
  }

  addEventListener('hashchange', () => void lookAtAddress())
  return { incoming, makeLink, shareLink, copyLink, lookAtAddress, openIncoming, compareIncoming, forgetIncoming: forget }
}
