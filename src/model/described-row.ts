import type {TableName} from './column.ts'
import type {Described} from './columns.ts'
import type {Day, Moment} from './day.ts'

type Columns<Name extends TableName> = Described[Name]['columns'][number]

type CamelCase<Text extends string> = Text extends `${infer First}_${infer Rest}`
  ? `${First}${Capitalize<CamelCase<Rest>>}`
  : Text

/** What a filled cell of a column is read as. */
interface ValueByKind {
  readonly id: string
  readonly text: string
  readonly day: Day
  readonly moment: Moment
  readonly count: number
  readonly number: number
  readonly fraction: number
  readonly latitude: number
  readonly longitude: number
}

type Value<Column> = Column extends {readonly kind: 'word'; readonly words: readonly (infer Word)[]}
  ? Column extends {readonly ownWords: true}
    ? string
    : Column extends {readonly isNumber: true}
      ? NumberIn<Word>
      : Word
  : Column extends {readonly kind: keyof ValueByKind}
    ? ValueByKind[Column['kind']]
    : never

type NumberIn<Word> = Word extends `${infer Digits extends number}` ? Digits : never

type FieldOf<Column> = Column extends {readonly name: infer Name extends string} ? CamelCase<Name> : never

/** The columns whose field is in every row. */
type Filled<Column> = Column extends {readonly mayBeEmpty: true}
  ? never
  : Column extends {readonly required: true} | {readonly emptyMeans: string}
    ? Column
    : never

/**
 * A row as its table describes it: the value of every filled cell by the camel-case name of its column, and where it
 * stands. The types of a Study are held to it, so that a column and a field cannot part unnoticed.
 */
export type DescribedRow<Name extends TableName> = {readonly row: number} & {
  [Column in Filled<Columns<Name>> as FieldOf<Column>]: Value<Column>
} & {
  [Column in Exclude<Columns<Name>, Filled<Columns<Name>>> as FieldOf<Column>]?: Value<Column>
}
