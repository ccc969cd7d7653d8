/** Hands bytes to the person: the device's share sheet where there is one and it takes files, else a download. */
export const download = (name: string, blob: Blob): void => {
  const link = document.createElement('a')
  const url = URL.createObjectURL(blob)
  link.href = url
  link.download = name
  document.body.append(link)
  link.click()
  link.remove()
  // The browser reads the address a moment after the click.
  setTimeout(() => URL.revokeObjectURL(url), 60_000)
}

export type ShareOutcome = 'shared' | 'downloaded' | 'cancelled'

export const shareOrDownload = async (name: string, blob: Blob, title: string): Promise<ShareOutcome> => {
  const file = new File([blob], name, { type: blob.type })
  if (typeof navigator.canShare === 'function' && navigator.canShare({ files: [file] })) {
    try {
      await navigator.share({ files: [file], title })
      return 'shared'
    } catch (error) {
      if (error instanceof DOMException && error.name === 'AbortError') return 'cancelled'
    }
  }
  download(name, blob)
  return 'downloaded'
}

/** A file name any system takes: letters, figures and dashes of the title, never empty. */
export const fileNameOf = (title: string, ending: string): string => {
  const plain = title.normalize('NFKD').replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '').slice(0, 60)
  return `${plain === '' ? 'yard' : plain}${ending}`
}
