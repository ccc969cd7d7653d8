import { z } from 'zod'
import { finite, idSchema, pointSchema } from '../parts.ts'

/** Argument parts that several commands share. */
export const idsArg = z.array(z.string().max(80)).max(20_000)
export const oneId = idSchema
export const pathArg = z.string().min(1).max(120)
export const stepM = finite.min(-1e6).max(1e6)
export const angleRad = finite.min(-1e3).max(1e3)
export const indexArg = z.number().int().min(0).max(2000)
export const pointArg = pointSchema
export const textArg = z.string().max(2000)
