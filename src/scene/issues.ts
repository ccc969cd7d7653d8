import type { z } from 'zod'
import type { Localized } from '../messages/localized.ts'

/** What is wrong with a value, where, in words a person can act on. Path as in `items[3].figures.ratedLoadN.value`. */
export interface Issue {
  path: string
  message: Localized
}

/** Dotted path, list positions in square brackets. */
export const pathText = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((text, part) => (typeof part === 'number' ? `${text}[${part}]` : text === '' ? String(part) : `${text}.${String(part)}`), '')

const valueAt = (root: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>((value, part) => (typeof value === 'object' && value !== null && Object.hasOwn(value, part) ? (value as Record<PropertyKey, unknown>)[part] : undefined), root)

const typeWords: Record<string, Localized> = {
  number: { en: 'a number', es: 'un número' },
  int: { en: 'a whole number', es: 'un número entero' },
  string: { en: 'a text', es: 'un texto' },
  boolean: { en: 'true or false', es: 'true o false' },
  object: { en: 'a group of fields { … }', es: 'un grupo de campos { … }' },
  record: { en: 'a group of fields { … }', es: 'un grupo de campos { … }' },
  array: { en: 'a list [ … ]', es: 'una lista [ … ]' },
  null: { en: 'null', es: 'null' },
}

/** A value as a reader sees it, short, without letting a long one fill the message. */
const shown = (value: unknown): Localized => {
  if (value === undefined) return { en: 'nothing', es: 'nada' }
  const text = typeof value === 'object' && value !== null ? (Array.isArray(value) ? '[…]' : '{…}') : typeof value === 'string' ? JSON.stringify(value) : String(value)
  const short = text.length > 40 ? `${text.slice(0, 39)}…` : text
  return { en: short, es: short }
}

const choices = (values: readonly unknown[]): string => values.map((value) => String(value)).join(', ')

function messageOf(issue: z.core.$ZodIssue, found: unknown): Localized {
  const is = shown(found)
  const missing = found === undefined
  switch (issue.code) {
    case 'invalid_type': {
      const word = typeWords[issue.expected] ?? { en: issue.expected, es: issue.expected }
      if (missing) return { en: `is missing; must be ${word.en}`, es: `falta; debe ser ${word.es}` }
      return { en: `must be ${word.en}, is ${is.en}`, es: `debe ser ${word.es}, es ${is.es}` }
    }
    case 'invalid_value': {
      const list = choices(issue.values)
      if (missing) return { en: `is missing; must be one of: ${list}`, es: `falta; debe ser uno de: ${list}` }
      return { en: `${is.en} is not known here; must be one of: ${list}`, es: `${is.es} no se conoce aquí; debe ser uno de: ${list}` }
    }
    case 'invalid_union': {
      const options = 'options' in issue && Array.isArray(issue.options) ? choices(issue.options) : ''
      if (options === '') return { en: `${is.en} fits none of the allowed forms`, es: `${is.es} no tiene ninguna de las formas permitidas` }
      if (missing) return { en: `is missing; must be one of: ${options}`, es: `falta; debe ser uno de: ${options}` }
      return { en: `${is.en} is not known here; must be one of: ${options}`, es: `${is.es} no se conoce aquí; debe ser uno de: ${options}` }
    }
    case 'too_small':
    case 'too_big':
      return sizeMessage(issue, is)
    case 'invalid_format':
      return issue.message.startsWith('an id') || issue.message.startsWith('a sha')
        ? { en: `${is.en}: ${issue.message}`, es: `${is.es}: tiene una forma que no se admite (${issue.pattern ?? ''})` }
        : { en: `${is.en} has a form that is not allowed`, es: `${is.es} tiene una forma que no se admite` }
    case 'invalid_key':
      return { en: 'a name here is too long', es: 'un nombre aquí es demasiado largo' }
    case 'custom':
      return { en: issue.message, es: typeof issue.params?.['es'] === 'string' ? issue.params['es'] : issue.message }
    default:
      return { en: issue.message, es: issue.message }
  }
}

function sizeMessage(issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig, is: Localized): Localized {
  const [bound, isLeast] = issue.code === 'too_small' ? [issue.minimum, true] : [issue.maximum, false]
  const limit = String(bound)
  const open = issue.inclusive === false
  if (issue.origin === 'string') return isLeast ? { en: `is shorter than ${limit} characters`, es: `tiene menos de ${limit} caracteres` } : { en: `is longer than ${limit} characters`, es: `tiene más de ${limit} caracteres` }
  if (issue.origin === 'array') return isLeast ? { en: `has fewer than ${limit} entries`, es: `tiene menos de ${limit} elementos` } : { en: `has more than ${limit} entries`, es: `tiene más de ${limit} elementos` }
  const word = isLeast ? (open ? { en: 'more than', es: 'mayor que' } : { en: 'at least', es: 'al menos' }) : open ? { en: 'less than', es: 'menor que' } : { en: 'at most', es: 'como máximo' }
  return { en: `must be ${word.en} ${limit}, is ${is.en}`, es: `debe ser ${word.es} ${limit}, es ${is.es}` }
}

/**
 * Issues of a failed parse, each with its path below `base`. An unknown field is reported by its own path,
 * one issue for each.
 */
export function issuesOf(error: z.ZodError, root: unknown, base: readonly PropertyKey[] = []): Issue[] {
  return error.issues.flatMap((issue) => {
    const path = [...base, ...issue.path]
    if (issue.code === 'unrecognized_keys') {
      return issue.keys.map((key) => ({ path: pathText([...path, key]), message: { en: 'is not a field known here', es: 'no es un campo conocido aquí' } }))
    }
    return [{ path: pathText(path), message: messageOf(issue, valueAt(root, issue.path)) }]
  })
}
