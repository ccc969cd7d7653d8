export { loaderPlateN } from '../derive/loaders.ts'
