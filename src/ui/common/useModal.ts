import { useEffect, useRef, type RefObject } from 'react'

/** A dialog that is open as long as it is drawn: the page behind is inert, and the focus goes back to what opened it. */
export const useModal = (): RefObject<HTMLDialogElement | null> => {
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => {
    const element = dialog.current
    if (element === null) return
    const before = document.activeElement
    if (!element.open) element.showModal()
    return () => {
      element.close()
      // React takes the dialog out of the page before the browser gives the focus back.
      if (before instanceof HTMLElement && before.isConnected) before.focus()
    }
  }, [])
  return dialog
}
