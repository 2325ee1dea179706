import {amount} from './amount.ts'
import {author} from './author.ts'
import {caution} from './caution.ts'
import {cite, cited} from './cite.ts'
import {date} from './date.ts'
import {dates} from './dates.ts'
import type {Directive} from './directive.ts'
import {document} from './document.ts'
import {each} from './each.ts'
import {figure} from './figure.ts'
import {given} from './given.ts'
import {interval} from './interval.ts'
import {joined} from './joined.ts'
import {list} from './list.ts'
import {method} from './method.ts'
import {plural} from './plural.ts'
import {references} from './references.ts'
import {see} from './see.ts'
import {sentence} from './sentence.ts'
import {table} from './table.ts'
import {taxon} from './taxon.ts'
import {text} from './text.ts'
import {value} from './value.ts'
import {why} from './why.ts'

/** The whole template language, by name. */
export const directives: ReadonlyMap<string, Directive> = new Map(
  [
    value,
    amount,
    interval,
    method,
    why,
    caution,
    text,
    sentence,
    date,
    dates,
    taxon,
    list,
    joined,
    plural,
    given,
    cite,
    cited,
    see,
    document,
    each,
    figure,
    table,
    author,
    references
  ].map((directive) => [directive.name, directive])
)
