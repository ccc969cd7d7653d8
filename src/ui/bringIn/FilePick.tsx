import { useRef, type ReactNode } from 'react'

/** A button that opens the device's file list; the same file may be chosen twice. */
export const FilePick = ({ label, accept, capture = false, onPick, primary = false }: { label: string; accept: string; capture?: boolean; onPick: (file: File) => void; primary?: boolean }): ReactNode => {
  const input = useRef<HTMLInputElement>(null)
  return (
    <>
      <button type="button" className={primary ? 'primary' : ''} onClick={() => input.current?.click()}>{label}</button>
      <input
        ref={input} type="file" accept={accept} className="visually-hidden" tabIndex={-1} aria-label={label} {...(capture ? { capture: 'environment' as const } : {})}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0]
          event.currentTarget.value = ''
          if (file !== undefined) onPick(file)
        }}
      />
    </>
  )
}
