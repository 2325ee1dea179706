/** One row a part: a replicate of a bootstrap. */
export type Rows = readonly ArrayLike<number>[]

/** The rows of parts first ... end - 1, whichever ranges were asked for before. */
export type RowsOfParts = (first: number, end: number) => Rows

/**
 * Who shares out work that consists of equal parts: the rows of all of them, in order. `task` is plain data from which
 * another thread can compute what `inline` computes here, so that who computed which part cannot be told from the rows.
 */
export type SplitWork = (task: unknown, parts: number, inline: RowsOfParts) => Rows
