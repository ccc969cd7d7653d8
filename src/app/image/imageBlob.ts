import type { App } from '../../state/app.ts'
export const imageBlob = (_app: App, _scale: number): Promise<Blob | null> => Promise.resolve(null)
