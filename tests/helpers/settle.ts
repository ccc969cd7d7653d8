/** Lets every promise that can move on do so. */
export const settle = (): Promise<void> => new Promise((resolve) => setImmediate(resolve))
